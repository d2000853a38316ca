-- CreateTable
CREATE TABLE "VerdictYear" (
    "year" TEXT NOT NULL PRIMARY KEY,
    "stamp" TEXT NOT NULL
);

-- Every year that has lunches, and the one that stands for all.
INSERT INTO "VerdictYear" ("year", "stamp")
SELECT "year", hex(randomblob(8))
FROM (SELECT substr("date", 1, 4) AS "year" FROM "Lunch" UNION SELECT '');

-- Triggers catch every writer: any connection, any process, what foreign keys take along. Each names a
-- column that lib/db/verdicts.ts reads. Stamps are drawn, not counted, so that one taken back with its
-- transaction never comes again. What moves a verdict between years, and what is taken along when its
-- lunch goes (its year is gone by then), counts for all years.
-- A later migration that rebuilds one of these tables must drop these triggers first and make them anew.

CREATE TRIGGER "Reaction_added" AFTER INSERT ON "Reaction"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = NEW."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Reaction_gone" AFTER DELETE ON "Reaction"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = OLD."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Reaction_changed" AFTER UPDATE OF "childId", "eaten", "face" ON "Reaction"
WHEN OLD."childId" IS NOT NEW."childId" OR OLD."eaten" IS NOT NEW."eaten" OR OLD."face" IS NOT NEW."face"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = NEW."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Reaction_moved" AFTER UPDATE OF "itemId" ON "Reaction"
WHEN OLD."itemId" IS NOT NEW."itemId"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "ItemShare_added" AFTER INSERT ON "ItemShare"
WHEN EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = NEW."itemId" AND "childId" = NEW."childId")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = NEW."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "ItemShare_gone" AFTER DELETE ON "ItemShare"
WHEN EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = OLD."itemId" AND "childId" = OLD."childId")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = OLD."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "ItemShare_changed" AFTER UPDATE OF "itemId", "childId", "amount" ON "ItemShare"
WHEN (OLD."itemId" IS NOT NEW."itemId" OR OLD."childId" IS NOT NEW."childId" OR OLD."amount" IS NOT NEW."amount")
  AND EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" IN (OLD."itemId", NEW."itemId"))
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "ItemTrick_added" AFTER INSERT ON "ItemTrick"
WHEN EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = NEW."itemId")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = NEW."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "ItemTrick_gone" AFTER DELETE ON "ItemTrick"
WHEN EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = OLD."itemId")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr(l."date", 1, 4) FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
              WHERE i."id" = OLD."itemId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "ItemTrick_changed" AFTER UPDATE OF "itemId", "trickId" ON "ItemTrick"
WHEN (OLD."itemId" IS NOT NEW."itemId" OR OLD."trickId" IS NOT NEW."trickId")
  AND EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" IN (OLD."itemId", NEW."itemId"))
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "LunchItem_changed" AFTER UPDATE OF "foodId", "part", "productId", "amount", "unit", "fate" ON "LunchItem"
WHEN (OLD."foodId" IS NOT NEW."foodId"
  OR OLD."part" IS NOT NEW."part"
  OR OLD."productId" IS NOT NEW."productId"
  OR OLD."amount" IS NOT NEW."amount"
  OR OLD."unit" IS NOT NEW."unit"
  OR OLD."fate" IS NOT NEW."fate")
  AND EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = NEW."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (
    coalesce((SELECT substr("date", 1, 4) FROM "Lunch" WHERE "id" = NEW."lunchId"), ''),
    hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "LunchItem_moved" AFTER UPDATE OF "id", "lunchId" ON "LunchItem"
WHEN OLD."id" IS NOT NEW."id" OR OLD."lunchId" IS NOT NEW."lunchId"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "LunchItem_added" AFTER INSERT ON "LunchItem"
WHEN EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = NEW."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "LunchItem_gone" AFTER DELETE ON "LunchItem"
WHEN EXISTS (SELECT 1 FROM "Reaction" WHERE "itemId" = OLD."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Lunch_changed" AFTER UPDATE OF "date" ON "Lunch"
WHEN OLD."date" IS NOT NEW."date"
  AND EXISTS (SELECT 1 FROM "LunchItem" i JOIN "Reaction" r ON r."itemId" = i."id" WHERE i."lunchId" = NEW."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (substr(OLD."date", 1, 4), hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES (substr(NEW."date", 1, 4), hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Lunch_moved" AFTER UPDATE OF "id" ON "Lunch"
WHEN OLD."id" IS NOT NEW."id"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Lunch_added" AFTER INSERT ON "Lunch"
WHEN EXISTS (SELECT 1 FROM "LunchItem" i JOIN "Reaction" r ON r."itemId" = i."id" WHERE i."lunchId" = NEW."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Lunch_gone" AFTER DELETE ON "Lunch"
WHEN EXISTS (SELECT 1 FROM "LunchItem" i JOIN "Reaction" r ON r."itemId" = i."id" WHERE i."lunchId" = OLD."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Food_changed" AFTER UPDATE OF "id", "familyId", "mergedIntoId" ON "Food"
WHEN OLD."id" IS NOT NEW."id" OR OLD."familyId" IS NOT NEW."familyId" OR OLD."mergedIntoId" IS NOT NEW."mergedIntoId"
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Food_added" AFTER INSERT ON "Food"
WHEN EXISTS (SELECT 1 FROM "LunchItem" WHERE "foodId" = NEW."id")
  OR EXISTS (SELECT 1 FROM "Food" WHERE "mergedIntoId" = NEW."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;

CREATE TRIGGER "Food_gone" AFTER DELETE ON "Food"
WHEN EXISTS (SELECT 1 FROM "LunchItem" WHERE "foodId" = OLD."id")
  OR EXISTS (SELECT 1 FROM "Food" WHERE "mergedIntoId" = OLD."id")
BEGIN
  INSERT INTO "VerdictYear" ("year", "stamp") VALUES ('', hex(randomblob(8)))
  ON CONFLICT ("year") DO UPDATE SET "stamp" = excluded."stamp";
END;
