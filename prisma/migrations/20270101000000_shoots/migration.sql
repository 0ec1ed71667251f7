-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "Shoot" (
    "id" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Shoot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ShootVersion" (
    "shootId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "document" JSON NOT NULL,
    "writeId" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "undoOf" INTEGER,

    CONSTRAINT "ShootVersion_pkey" PRIMARY KEY ("shootId","version")
);

-- CreateIndex
CREATE UNIQUE INDEX "ShootVersion_shootId_writeId_key" ON "ShootVersion"("shootId", "writeId");

-- AddForeignKey
ALTER TABLE "ShootVersion" ADD CONSTRAINT "ShootVersion_shootId_fkey" FOREIGN KEY ("shootId") REFERENCES "Shoot"("id") ON DELETE CASCADE ON UPDATE CASCADE;

