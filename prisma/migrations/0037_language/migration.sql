-- The words and the marks of numbers a person reads; NULL follows the device and the language.
ALTER TABLE "User" ADD COLUMN "language" TEXT, ADD COLUMN "numbers" TEXT;

ALTER TABLE "User"
  ADD CONSTRAINT "User_language" CHECK ("language" IN ('en', 'de')),
  ADD CONSTRAINT "User_numbers" CHECK ("numbers" IN ('space-point', 'space-comma', 'point-comma'));
