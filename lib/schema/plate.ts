import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const evidence = z.enum(["measured", "documented", "inferred", "assumed"], "Choose how well it is known.");
const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-09-30.");

/** A number of a communication profile family of IEC 61784; whether it is on the list is asked where it is stored. */
const profileFamily = z
  .int("Write the number alone, such as 16.")
  .min(1, "At least 1.")
  .max(99, "At most 99.");

/** What was read off a controller and what it leads; null is not known, or leads none. */
const controllerPlate = z.strictObject({
  hardware: z
    .string()
    .trim()
    .regex(/^[A-Za-z]\d{0,3}$/, "Write a hardware letter, or a letter and level such as C2.")
    .nullable(),
  axisLimit: z
    .int("Write a whole number from 1 to 1000.")
    .min(1, "At least 1.")
    .max(1000, "At most 1000.")
    .nullable(),
  leadsLineId: z.uuid().nullable(),
  readOn: day.nullable(),
  evidence,
});
export const changeControllerPlate = z.strictObject({
  controllerId: z.uuid(),
  seen: controllerPlate,
  wanted: controllerPlate,
});

/** What stands on the plate of a part. */
const partPlate = z.strictObject({
  powerKw: z
    .number("Write kilowatts, such as 1.5.")
    .positive("Write a power above 0 kW.")
    .max(10_000, "At most 10,000 kW.")
    .nullable(),
  profileFamily: profileFamily.nullable(),
});
export const changePartPlate = z.strictObject({ partId: z.uuid(), seen: partPlate, wanted: partPlate });

const networkPlate = z.strictObject({ profileFamily: profileFamily.nullable() });
export const changeNetworkPlate = z.strictObject({
  networkId: z.uuid(),
  seen: networkPlate,
  wanted: networkPlate,
});

export type ControllerPlate = z.output<typeof controllerPlate>;
export type PartPlate = z.output<typeof partPlate>;
export type ChangeControllerPlate = z.output<typeof changeControllerPlate>;
export type ChangePartPlate = z.output<typeof changePartPlate>;
export type ChangeNetworkPlate = z.output<typeof changeNetworkPlate>;
