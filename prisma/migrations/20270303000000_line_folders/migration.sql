-- CreateIndex
CREATE INDEX "FileLine_file_idx" ON "FileLine"("file" text_pattern_ops);
