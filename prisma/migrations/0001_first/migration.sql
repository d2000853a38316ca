-- CreateTable
CREATE TABLE "Series" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "startedOn" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "valueJson" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "DayOff" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "label" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "Child" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "privateName" TEXT NOT NULL,
    "onScreenName" TEXT NOT NULL,
    "birthMonth" TEXT,
    "portionFactor" REAL NOT NULL DEFAULT 1,
    "facePoints" INTEGER,
    "position" INTEGER NOT NULL DEFAULT 0,
    "retiredAt" DATETIME
);

-- CreateTable
CREATE TABLE "Avoidance" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "childId" TEXT NOT NULL,
    "allergen" TEXT,
    "foodId" TEXT,
    "familyId" TEXT,
    "severity" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Avoidance_childId_fkey" FOREIGN KEY ("childId") REFERENCES "Child" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Avoidance_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Avoidance_familyId_fkey" FOREIGN KEY ("familyId") REFERENCES "Family" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SchoolRule" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "ruleJson" TEXT NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,
    "active" BOOLEAN NOT NULL DEFAULT true
);

-- CreateTable
CREATE TABLE "Shop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "daysJson" TEXT NOT NULL DEFAULT '[]',
    "hours" TEXT NOT NULL DEFAULT '',
    "distanceOrder" INTEGER NOT NULL DEFAULT 0,
    "aislesJson" TEXT NOT NULL DEFAULT '[]',
    "note" TEXT NOT NULL DEFAULT '',
    "retiredAt" DATETIME
);

-- CreateTable
CREATE TABLE "Family" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "group" TEXT NOT NULL,
    "restDays" INTEGER
);

-- CreateTable
CREATE TABLE "Food" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "familyId" TEXT NOT NULL,
    "group" TEXT NOT NULL,
    "partsJson" TEXT NOT NULL,
    "allergensJson" TEXT NOT NULL DEFAULT '[]',
    "maybeJson" TEXT NOT NULL DEFAULT '[]',
    "traitsJson" TEXT NOT NULL DEFAULT '[]',
    "coloursJson" TEXT NOT NULL DEFAULT '[]',
    "motifsJson" TEXT NOT NULL DEFAULT '[]',
    "pattern" TEXT NOT NULL DEFAULT 'plain',
    "form" TEXT NOT NULL DEFAULT 'soft',
    "holding" TEXT NOT NULL DEFAULT 'none',
    "sliceable" BOOLEAN NOT NULL DEFAULT false,
    "seasonJson" TEXT,
    "shelfJson" TEXT NOT NULL,
    "yieldFactor" REAL NOT NULL DEFAULT 1,
    "servingGrams" REAL NOT NULL,
    "gramsPerCup" REAL,
    "unitsJson" TEXT NOT NULL DEFAULT '{}',
    "countUnit" TEXT,
    "servingCents" INTEGER NOT NULL DEFAULT 0,
    "stepsJson" TEXT NOT NULL DEFAULT '[]',
    "restDays" INTEGER,
    "isStaple" BOOLEAN NOT NULL DEFAULT false,
    "sourcesJson" TEXT NOT NULL DEFAULT '{}',
    "catalogueVersion" INTEGER,
    "editedAt" DATETIME,
    "retiredAt" DATETIME,
    "mergedIntoId" TEXT,
    "recalledAt" DATETIME,
    "recallNote" TEXT NOT NULL DEFAULT '',
    "isWish" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Food_familyId_fkey" FOREIGN KEY ("familyId") REFERENCES "Family" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Food_mergedIntoId_fkey" FOREIGN KEY ("mergedIntoId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "FoodAlias" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "foodId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "origin" TEXT NOT NULL DEFAULT 'user',
    CONSTRAINT "FoodAlias_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Product" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "foodId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "flavour" TEXT NOT NULL DEFAULT '',
    "packAmount" REAL,
    "packUnit" TEXT,
    "packGrams" REAL,
    "seasonJson" TEXT,
    "provenance" TEXT NOT NULL DEFAULT 'bought',
    "disclosure" TEXT NOT NULL DEFAULT '',
    "allergensJson" TEXT NOT NULL DEFAULT '[]',
    "maybeJson" TEXT NOT NULL DEFAULT '[]',
    "traitsJson" TEXT NOT NULL DEFAULT '[]',
    "status" TEXT NOT NULL DEFAULT 'available',
    "recalledAt" DATETIME,
    "recallNote" TEXT NOT NULL DEFAULT '',
    "retiredAt" DATETIME,
    "revision" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Product_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ProductShop" (
    "productId" TEXT NOT NULL,
    "shopId" TEXT NOT NULL,
    "aisle" TEXT NOT NULL DEFAULT '',
    "onlyThere" BOOLEAN NOT NULL DEFAULT false,

    PRIMARY KEY ("productId", "shopId"),
    CONSTRAINT "ProductShop_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ProductShop_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Price" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "productId" TEXT NOT NULL,
    "shopId" TEXT NOT NULL,
    "cents" INTEGER NOT NULL,
    "on" TEXT NOT NULL,
    CONSTRAINT "Price_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Price_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Stock" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "foodId" TEXT NOT NULL,
    "productId" TEXT,
    "grams" REAL NOT NULL,
    "boughtOn" TEXT,
    "openedOn" TEXT,
    "useBy" TEXT,
    "place" TEXT NOT NULL DEFAULT 'fridge',
    "goneOn" TEXT,
    "goneHow" TEXT,
    "paidCents" INTEGER,
    CONSTRAINT "Stock_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Stock_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Par" (
    "foodId" TEXT NOT NULL PRIMARY KEY,
    "gramsPerDay" REAL NOT NULL,
    "leadDays" INTEGER NOT NULL DEFAULT 1,
    "reserveGrams" REAL NOT NULL DEFAULT 0
);

-- CreateTable
CREATE TABLE "Trick" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "motifsJson" TEXT NOT NULL DEFAULT '[]',
    "coloursJson" TEXT NOT NULL DEFAULT '[]',
    "minutes" REAL NOT NULL DEFAULT 0,
    "needsSliceable" BOOLEAN NOT NULL DEFAULT false,
    "catalogueVersion" INTEGER,
    "editedAt" DATETIME,
    "retiredAt" DATETIME
);

-- CreateTable
CREATE TABLE "Theme" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "motifsJson" TEXT NOT NULL DEFAULT '[]',
    "paletteJson" TEXT NOT NULL DEFAULT '[]',
    "seasonJson" TEXT NOT NULL DEFAULT '{"kind":"always"}',
    "note" TEXT NOT NULL DEFAULT '',
    "restDays" INTEGER,
    "isReference" BOOLEAN NOT NULL DEFAULT false,
    "editedAt" DATETIME,
    "retiredAt" DATETIME,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Episode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "weekOf" TEXT NOT NULL,
    "themeId" TEXT,
    "workingTitle" TEXT NOT NULL DEFAULT '',
    "lockedAt" DATETIME,
    "publishedAt" DATETIME,
    "publishedOn" TEXT,
    "url" TEXT NOT NULL DEFAULT '',
    "surprise" TEXT NOT NULL DEFAULT '',
    "surpriseRevealOn" TEXT,
    "notes" TEXT NOT NULL DEFAULT '',
    "runtimeSeconds" INTEGER,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Episode_themeId_fkey" FOREIGN KEY ("themeId") REFERENCES "Theme" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Lunch" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "angle" TEXT NOT NULL DEFAULT '',
    "minutesUsed" REAL,
    "ambientC" REAL,
    "ambientNote" TEXT NOT NULL DEFAULT '',
    "hard" TEXT NOT NULL DEFAULT '',
    "pickups" TEXT NOT NULL DEFAULT '',
    "packedAt" DATETIME,
    "revision" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Lunch_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LunchItem" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "lunchId" TEXT NOT NULL,
    "foodId" TEXT NOT NULL,
    "productId" TEXT,
    "shopId" TEXT,
    "part" TEXT NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,
    "amount" REAL NOT NULL,
    "unit" TEXT NOT NULL DEFAULT 'g',
    "fate" TEXT NOT NULL DEFAULT 'planned',
    "reason" TEXT NOT NULL DEFAULT '',
    "insteadOfId" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "owedUseBy" TEXT,
    "settledOn" TEXT,
    "settledHow" TEXT,
    CONSTRAINT "LunchItem_lunchId_fkey" FOREIGN KEY ("lunchId") REFERENCES "Lunch" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "LunchItem_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "LunchItem_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "LunchItem_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "LunchItem_insteadOfId_fkey" FOREIGN KEY ("insteadOfId") REFERENCES "LunchItem" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ItemTrick" (
    "itemId" TEXT NOT NULL,
    "trickId" TEXT NOT NULL,

    PRIMARY KEY ("itemId", "trickId"),
    CONSTRAINT "ItemTrick_itemId_fkey" FOREIGN KEY ("itemId") REFERENCES "LunchItem" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ItemTrick_trickId_fkey" FOREIGN KEY ("trickId") REFERENCES "Trick" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ItemShare" (
    "itemId" TEXT NOT NULL,
    "childId" TEXT NOT NULL,
    "amount" REAL NOT NULL,

    PRIMARY KEY ("itemId", "childId"),
    CONSTRAINT "ItemShare_itemId_fkey" FOREIGN KEY ("itemId") REFERENCES "LunchItem" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ItemShare_childId_fkey" FOREIGN KEY ("childId") REFERENCES "Child" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reaction" (
    "itemId" TEXT NOT NULL,
    "childId" TEXT NOT NULL,
    "eaten" INTEGER,
    "face" REAL,
    "facePoints" INTEGER,
    "quote" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "loggedAt" DATETIME NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "conflictJson" TEXT,

    PRIMARY KEY ("itemId", "childId"),
    CONSTRAINT "Reaction_itemId_fkey" FOREIGN KEY ("itemId") REFERENCES "LunchItem" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Reaction_childId_fkey" FOREIGN KEY ("childId") REFERENCES "Child" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReactionEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "itemId" TEXT NOT NULL,
    "childId" TEXT NOT NULL,
    "changeJson" TEXT NOT NULL,
    "baseRevision" INTEGER NOT NULL,
    "device" TEXT NOT NULL DEFAULT '',
    "madeAt" DATETIME NOT NULL,
    "appliedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "ReactionEvent_itemId_fkey" FOREIGN KEY ("itemId") REFERENCES "LunchItem" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ReactionEvent_childId_fkey" FOREIGN KEY ("childId") REFERENCES "Child" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "lunchId" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'box',
    "file" TEXT NOT NULL,
    "thumb" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Photo_lunchId_fkey" FOREIGN KEY ("lunchId") REFERENCES "Lunch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Waiver" (
    "lunchId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,

    PRIMARY KEY ("lunchId", "key"),
    CONSTRAINT "Waiver_lunchId_fkey" FOREIGN KEY ("lunchId") REFERENCES "Lunch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StepTick" (
    "lunchId" TEXT NOT NULL,
    "stepKey" TEXT NOT NULL,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "minutes" REAL,

    PRIMARY KEY ("lunchId", "stepKey"),
    CONSTRAINT "StepTick_lunchId_fkey" FOREIGN KEY ("lunchId") REFERENCES "Lunch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PrepTiming" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "foodId" TEXT NOT NULL,
    "step" TEXT NOT NULL,
    "minutes" REAL NOT NULL,
    "on" TEXT NOT NULL,
    CONSTRAINT "PrepTiming_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ErrandRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "shopId" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "weekOf" TEXT NOT NULL,
    "doneAt" DATETIME,
    "byHand" BOOLEAN NOT NULL DEFAULT false,
    CONSTRAINT "ErrandRun_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ErrandLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "runId" TEXT NOT NULL,
    "foodId" TEXT,
    "productId" TEXT,
    "label" TEXT NOT NULL DEFAULT '',
    "packs" INTEGER NOT NULL DEFAULT 1,
    "paidCents" INTEGER,
    "state" TEXT NOT NULL DEFAULT 'open',
    "byHand" BOOLEAN NOT NULL DEFAULT false,
    "stamp" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "ErrandLine_runId_fkey" FOREIGN KEY ("runId") REFERENCES "ErrandRun" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ErrandLine_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "ErrandLine_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ViewerPromise" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "what" TEXT NOT NULL,
    "episodeId" TEXT,
    "dueOn" TEXT,
    "keptOn" TEXT,
    "madeOn" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "ViewerPromise_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Template" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Draft" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT,
    "lunchId" TEXT,
    "kind" TEXT NOT NULL,
    "templateVersion" INTEGER NOT NULL DEFAULT 0,
    "generatedJson" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "edited" BOOLEAN NOT NULL DEFAULT false,
    "publishedOn" TEXT,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Draft_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ChapterMark" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "seconds" REAL NOT NULL,
    "title" TEXT NOT NULL,
    CONSTRAINT "ChapterMark_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ScreenTime" (
    "episodeId" TEXT NOT NULL,
    "childId" TEXT NOT NULL,
    "seconds" REAL NOT NULL,

    PRIMARY KEY ("episodeId", "childId"),
    CONSTRAINT "ScreenTime_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ScreenTime_childId_fkey" FOREIGN KEY ("childId") REFERENCES "Child" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ViewerIdea" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "text" TEXT NOT NULL,
    "receivedOn" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'inbox',
    "becameId" TEXT,
    "note" TEXT NOT NULL DEFAULT ''
);

-- CreateTable
CREATE TABLE "Change" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "scope" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "undoJson" TEXT NOT NULL,
    "undoneAt" DATETIME
);

-- CreateTable
CREATE TABLE "Session" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "device" TEXT NOT NULL DEFAULT '',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "seenAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "endsAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Attempt" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Proposal" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "fromWeek" TEXT NOT NULL,
    "weeks" INTEGER NOT NULL,
    "seed" TEXT NOT NULL,
    "planJson" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateIndex
CREATE INDEX "Avoidance_childId_idx" ON "Avoidance"("childId");

-- CreateIndex
CREATE INDEX "Food_familyId_idx" ON "Food"("familyId");

-- CreateIndex
CREATE INDEX "FoodAlias_foodId_idx" ON "FoodAlias"("foodId");

-- CreateIndex
CREATE INDEX "FoodAlias_name_idx" ON "FoodAlias"("name");

-- CreateIndex
CREATE INDEX "Product_foodId_idx" ON "Product"("foodId");

-- CreateIndex
CREATE INDEX "Price_productId_on_idx" ON "Price"("productId", "on");

-- CreateIndex
CREATE INDEX "Stock_foodId_idx" ON "Stock"("foodId");

-- CreateIndex
CREATE INDEX "Stock_goneOn_idx" ON "Stock"("goneOn");

-- CreateIndex
CREATE UNIQUE INDEX "Episode_weekOf_key" ON "Episode"("weekOf");

-- CreateIndex
CREATE INDEX "Episode_themeId_idx" ON "Episode"("themeId");

-- CreateIndex
CREATE UNIQUE INDEX "Lunch_date_key" ON "Lunch"("date");

-- CreateIndex
CREATE INDEX "Lunch_episodeId_idx" ON "Lunch"("episodeId");

-- CreateIndex
CREATE INDEX "LunchItem_lunchId_idx" ON "LunchItem"("lunchId");

-- CreateIndex
CREATE INDEX "LunchItem_foodId_idx" ON "LunchItem"("foodId");

-- CreateIndex
CREATE INDEX "LunchItem_productId_idx" ON "LunchItem"("productId");

-- CreateIndex
CREATE INDEX "ItemTrick_trickId_idx" ON "ItemTrick"("trickId");

-- CreateIndex
CREATE INDEX "Reaction_childId_idx" ON "Reaction"("childId");

-- CreateIndex
CREATE INDEX "ReactionEvent_itemId_childId_idx" ON "ReactionEvent"("itemId", "childId");

-- CreateIndex
CREATE INDEX "Photo_lunchId_idx" ON "Photo"("lunchId");

-- CreateIndex
CREATE INDEX "PrepTiming_foodId_idx" ON "PrepTiming"("foodId");

-- CreateIndex
CREATE INDEX "ErrandRun_weekOf_idx" ON "ErrandRun"("weekOf");

-- CreateIndex
CREATE UNIQUE INDEX "ErrandRun_shopId_date_key" ON "ErrandRun"("shopId", "date");

-- CreateIndex
CREATE INDEX "ErrandLine_runId_idx" ON "ErrandLine"("runId");

-- CreateIndex
CREATE UNIQUE INDEX "Template_kind_version_key" ON "Template"("kind", "version");

-- CreateIndex
CREATE INDEX "Draft_episodeId_idx" ON "Draft"("episodeId");

-- CreateIndex
CREATE INDEX "ChapterMark_episodeId_idx" ON "ChapterMark"("episodeId");

-- CreateIndex
CREATE INDEX "Change_scope_at_idx" ON "Change"("scope", "at");
