-- A house recipe's ingredients, one a line as typed.
ALTER TABLE "Food" ADD COLUMN "ingredients" TEXT NOT NULL DEFAULT '';
