/** A place as far as the papers of a shipment ask. */
export interface Country {
  /** ISO 3166-1 alpha-2. */
  readonly country: string;
  /** ISO 4217. */
  readonly currency: string;
}

/** Member states of the European Union in 2026: one customs territory (from memory; special territories not looked at). */
const ONE_TERRITORY: ReadonlySet<string> = new Set(
  "AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE".split(" "),
);

export interface Border {
  /** Whether goods leave a customs territory on the way. */
  readonly customs: boolean;
  /** What to see to, in words; empty within one country and currency. */
  readonly heed: readonly string[];
}

/** What lies between two sites; an aid to planning, the forwarder or customs office decides. */
export function borderBetween(from: Country, to: Country): Border {
  const abroad = from.country !== to.country;
  const customs = abroad && !(ONE_TERRITORY.has(from.country) && ONE_TERRITORY.has(to.country));
  const heed = [
    ...(customs ? [`Customs ${from.country} to ${to.country}: papers, value, origin`] : []),
    ...(abroad && !customs
      ? [`Other country (${from.country} to ${to.country}), one customs territory`]
      : []),
    ...(from.currency === to.currency ? [] : [`Other currency (${from.currency} to ${to.currency})`]),
  ];
  return { customs, heed };
}
