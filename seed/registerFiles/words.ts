import type { Language } from "@/seed/registerFiles/habits";

const LANGUAGES: readonly Language[] = ["de", "pl", "sv", "en", "es"];

// Stored value, and the word for it in German, Polish, Swedish, English and Spanish.
const TABLE = `
drive|Umrichter|Napęd|Servodrift|Servo drive|Variador
motor|Motor|Silnik|Elmotor|Motor|Motor
controller|SPS|Sterownik|Styrsystem|PLC|Controlador
power_supply|Netzteil|Zasilacz|Nätaggregat|PSU|Fuente
io|E/A|We/Wy|I/O|I/O rack|E/S
hmi|Bediengerät|Panel operatorski|Operatörspanel|Operator terminal|Pantalla
converter|LWL-Umsetzer|Konwerter światłowodowy|Fiberomvandlare|Media converter|Convertidor de fibra
network_card|Busbaugruppe|Karta sieciowa|Busskort|Bus card|Tarjeta de bus
fibre_ring|LWL-Ring|Pierścień|Fiberring|Fiber ring|Anillo de fibra
ethernet|Ethernet|Ethernet|Ethernet|Ethernet|Ethernet
analogue|Analog|Analogowe|Analog|Analog|Analógica
pulse|Takt/Richtung|Impulsowe|Puls|Step/direction|Pulsos
to_switch|Referenzschalter|Wyłącznik|Brytare|Home switch|Interruptor
to_marker|Nullmarke|Znacznik|Nollpuls|Index mark|Marca
to_switch_then_marker|Schalter und Nullmarke|Wyłącznik i znacznik|Brytare och nollpuls|Switch and marker|Interruptor y marca
to_end_stop|Festanschlag|Zderzak|Anslag|End stop|Tope
absolute_encoder|Absolutgeber|Enkoder absolutny|Absolutgivare|Absolute|Absoluto
program|Programm|Program|Program|Program|Programa
parameters|Antriebsparameter|Parametry napędu|Parametrar|Parameter set|Parámetros
operator_panel|Bedienpanel|Panel operatorski|Operatörspanel|Operator panel|Panel de operador
usable|Brauchbar|Sprawny|Användbar|Good|Utilizable
unproven|Ungeprüft|Niesprawdzony|Oprovad|Not tested|Sin probar
wrong_revision|Falscher Stand|Zła rewizja|Fel revision|Wrong level|Revisión incorrecta
on_hold|Gesperrt|Wstrzymany|Spärrad|Quality hold|Bloqueado
reserved|Reserviert|Zarezerwowany|Reserverad|Reserved|Reservado
failure|Störung|Awaria|Haveri|Breakdown|Falla
no_fault_found|Kein Fehler gefunden|Nie stwierdzono usterki|Inget fel hittat|NFF|Sin falla
removal|Austausch|Wymiana|Byte|Replaced|Cambio
true|Ja|Tak|Ja|Yes|Sí
false|Nein|Nie|Nej|No|No
`;

const WORDS = new Map(
  TABLE.trim()
    .split("\n")
    .map((line) => line.split("|"))
    .map(([value = "", ...words]) => [value, words]),
);

/** The word a site uses for a choice, or for yes and no. */
export function wordFor(value: string, language: Language): string {
  const word = WORDS.get(value)?.[LANGUAGES.indexOf(language)];
  if (!word) throw new RangeError(`value must be a known choice, got ${value}`);
  return word;
}
