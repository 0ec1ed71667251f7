-- CreateTable
CREATE TABLE "LogLine" (
    "shootId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "entryId" TEXT NOT NULL,
    "document" JSON NOT NULL,
    "received" TIMESTAMPTZ(3) NOT NULL,
    "sent" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "LogLine_pkey" PRIMARY KEY ("shootId","position")
);

-- CreateIndex
CREATE UNIQUE INDEX "LogLine_shootId_entryId_key" ON "LogLine"("shootId", "entryId");

-- AddForeignKey
ALTER TABLE "LogLine" ADD CONSTRAINT "LogLine_shootId_fkey" FOREIGN KEY ("shootId") REFERENCES "Shoot"("id") ON DELETE CASCADE ON UPDATE CASCADE;

