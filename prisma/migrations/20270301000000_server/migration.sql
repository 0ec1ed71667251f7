-- CreateTable
CREATE TABLE "SmallFile" (
    "name" TEXT NOT NULL,
    "content" JSON NOT NULL,
    "revision" INTEGER NOT NULL,

    CONSTRAINT "SmallFile_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "FileLine" (
    "file" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "FileLine_pkey" PRIMARY KEY ("file","position")
);

-- CreateTable
CREATE TABLE "Blob" (
    "folder" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Blob_pkey" PRIMARY KEY ("folder","name")
);

-- CreateTable
CREATE TABLE "Work" (
    "id" TEXT NOT NULL,
    "asked" BYTEA NOT NULL,
    "told" BYTEA,
    "fault" TEXT,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Work_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Work_at_idx" ON "Work"("at");

