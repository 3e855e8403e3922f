/** What XML 1.0 (section 2.2, from memory) has no place for: most control characters and halves of letters. */
const NOT_IN_XML = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

/** Text as it stands in XML, between tags or in quotes. */
export const escaped = (text: string) =>
  text
    .replace(NOT_IN_XML, "\uFFFD")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
