-- CreateTable
CREATE TABLE "DayFactEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "lunchId" TEXT NOT NULL,
    "changeJson" TEXT NOT NULL,
    "baseRevision" INTEGER NOT NULL,
    "device" TEXT NOT NULL DEFAULT '',
    "madeAt" DATETIME NOT NULL,
    "appliedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "DayFactEvent_lunchId_fkey" FOREIGN KEY ("lunchId") REFERENCES "Lunch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RemovedPhoto" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "lunchId" TEXT NOT NULL,
    CONSTRAINT "RemovedPhoto_lunchId_fkey" FOREIGN KEY ("lunchId") REFERENCES "Lunch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "DayFactEvent_lunchId_idx" ON "DayFactEvent"("lunchId");

-- CreateIndex
CREATE INDEX "RemovedPhoto_lunchId_idx" ON "RemovedPhoto"("lunchId");
