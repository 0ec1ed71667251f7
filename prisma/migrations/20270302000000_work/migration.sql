-- A question or an answer lives for an hour and can be worked out again: it is not written twice for a crash's sake, nor
-- pressed, which for a forecast's curves takes longer than the rest of its way.
ALTER TABLE "Work" SET UNLOGGED;
ALTER TABLE "Work" ALTER COLUMN "asked" SET STORAGE EXTERNAL, ALTER COLUMN "told" SET STORAGE EXTERNAL;
