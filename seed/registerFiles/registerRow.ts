/** What a register says of one thing: by field, dates as YYYY-MM-DD, times as YYYY-MM-DDTHH:MM of the site's clock. */
export type RegisterRow = Readonly<Record<string, string | number | boolean | null>>;
