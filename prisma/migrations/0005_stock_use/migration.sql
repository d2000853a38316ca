-- CreateTable
CREATE TABLE "StockUse" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "lotId" TEXT NOT NULL,
    "itemId" TEXT NOT NULL,
    "grams" REAL NOT NULL,
    "on" TEXT NOT NULL,
    "isOpening" BOOLEAN NOT NULL DEFAULT false,
    CONSTRAINT "StockUse_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Stock" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "StockUse_itemId_fkey" FOREIGN KEY ("itemId") REFERENCES "LunchItem" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "StockUse_lotId_idx" ON "StockUse"("lotId");

-- CreateIndex
CREATE INDEX "StockUse_itemId_idx" ON "StockUse"("itemId");
