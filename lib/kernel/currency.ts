/** Codes by the places their amounts have; ISO 4217, list dated 2024-06-25. Funds, metals and test codes are left out. */
const CODES = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
  // Those of two places are typed from memory; the others are checked against the list.
  2:
    "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP " +
    "CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR " +
    "JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN " +
    "NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP " +
    "SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD YER ZAR ZMW ZWL",
  3: "BHD IQD JOD KWD LYD OMR TND",
  4: "CLF UYW",
} as const;

const PLACES: ReadonlyMap<string, number> = new Map(
  Object.entries(CODES).flatMap(([places, codes]) =>
    codes.split(" ").map((code): [string, number] => [code, Number(places)]),
  ),
);

/** Whether the code is one of ISO 4217. */
export function isCurrency(code: string): boolean {
  return PLACES.has(code);
}

/**
 * Places behind the point that amounts of a currency have, 0 to 4; two for a code that is not in the list.
 *
 * The formats of the platform are not asked: they show fewer places than ISO 4217 has for some currencies.
 *
 * @param code ISO 4217, three capitals.
 */
export function placesOf(code: string): number {
  return PLACES.get(code) ?? 2;
}
