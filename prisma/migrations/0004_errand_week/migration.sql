-- CreateTable
CREATE TABLE "ErrandWeek" (
    "weekOf" TEXT NOT NULL PRIMARY KEY,
    "decisionsJson" TEXT NOT NULL DEFAULT '{}',
    "standingJson" TEXT,
    "toldJson" TEXT NOT NULL DEFAULT '{}'
);
