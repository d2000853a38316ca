-- CreateIndex
CREATE INDEX "LunchItem_insteadOfId_idx" ON "LunchItem"("insteadOfId");
