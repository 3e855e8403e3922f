import { defineField, type Field } from "@/lib/intake/field";

/** Fields of the asset register: site, line, machine and its controller. */
export const ASSET_FIELDS: readonly Field[] = [
  defineField({
    key: "siteCode",
    label: "Site",
    kind: "code",
    required: true,
    synonyms:
      "site code|plant|plant code|factory|werk|standort|zakład|fabryka|anläggning|fabrik|planta|sitio|centro",
    example: "VEL",
  }),
  defineField({
    key: "siteName",
    label: "Site name",
    kind: "text",
    synonyms:
      "plant name|town|werkname|standortname|ort|nazwa zakładu|miasto|anläggningsnamn|ort namn|nombre de planta|ciudad",
    example: "Velmark",
  }),
  defineField({
    key: "country",
    label: "Country",
    kind: "code",
    synonyms: "country code|land|kraj|país",
    example: "DE",
  }),
  defineField({
    key: "timeZone",
    label: "Time zone",
    kind: "text",
    synonyms: "timezone|tz|zeitzone|strefa czasowa|tidszon|zona horaria|huso horario",
    example: "Europe/Berlin",
  }),
  defineField({
    key: "currency",
    label: "Currency",
    kind: "code",
    synonyms: "curr|währung|waluta|valuta|moneda|divisa",
    example: "EUR",
  }),
  defineField({
    key: "budgetRate",
    label: "Budget rate",
    kind: "decimal",
    unit: "site currency per EUR",
    min: 0.000001,
    max: 1_000_000,
    synonyms:
      "rate|exchange rate|per eur|budget exchange rate|budgetkurs|umrechnungskurs|kurs budżetowy|kurs|budgetkurs eur|växelkurs|tipo de cambio|tipo de cambio presupuestado",
    example: "4.30",
  }),
  defineField({
    key: "lineCode",
    label: "Line",
    kind: "code",
    required: true,
    synonyms:
      "line code|line no|production line|linie|linien-nr|liniencode|linia|kod linii|linje|linjekod|línea|código de línea",
    example: "VEL-01",
  }),
  defineField({
    key: "lineName",
    label: "Line name",
    kind: "text",
    synonyms:
      "line description|linienname|bezeichnung linie|linienbezeichnung|nazwa linii|linjenamn|nombre de línea|descripción de línea",
    example: "Carton A",
  }),
  defineField({
    key: "shiftsPerWeek",
    label: "Shifts per week",
    kind: "integer",
    min: 0,
    max: 21,
    synonyms:
      "shifts|shifts/wk|schichten|schichten pro woche|schichten/woche|zmiany|zmiany na tydzień|skift|skift per vecka|turnos|turnos por semana",
    example: "18",
  }),
  defineField({
    key: "lineInServiceYear",
    label: "Line in service since",
    kind: "year",
    synonyms:
      "line year|in service year|year line|baujahr linie|inbetriebnahme linie|rok linii|rok uruchomienia linii|linjeår|driftår linje|año de línea|año puesta en marcha línea",
    example: "2009",
  }),
  defineField({
    key: "costPerHour",
    label: "Cost of one hour's stop",
    kind: "decimal",
    unit: "per h, site currency",
    min: 0,
    max: 1_000_000,
    synonyms:
      "cost per hour|cost/h|downtime cost|contribution/h|stillstandskosten|kosten pro stunde|kosten je stunde|kosten/h|koszt godziny|koszt postoju|koszt/h|kostnad per timme|stoppkostnad|costo por hora|coste por hora|costo/h",
    example: "2900",
  }),
  defineField({
    key: "costFixed",
    label: "Cost of any stop at all",
    kind: "decimal",
    unit: "per stop, site currency",
    min: 0,
    max: 10_000_000,
    synonyms:
      "fixed cost per stop|fixed stop cost|cost per stop|fixkosten je stillstand|fixkosten pro stillstand|koszt stały postoju|stały koszt zatrzymania|fast kostnad per stopp|fast stoppkostnad|costo fijo por paro|coste fijo por parada",
    example: "450",
  }),
  defineField({
    key: "costOwner",
    label: "Cost approved by",
    kind: "text",
    synonyms:
      "cost owner|approved by|owner of cost|kostenverantwortlicher|freigegeben von|właściciel kosztu|zatwierdził|kostnadsägare|godkänd av|responsable del costo|aprobado por",
    example: "Controlling Velmark",
  }),
  defineField({
    key: "costApprovedOn",
    label: "Cost approved on",
    kind: "date",
    synonyms:
      "approved on|approval date|freigabe am|freigabedatum|zatwierdzono|data zatwierdzenia|godkänd den|aprobado el|fecha de aprobación",
    example: "2026-03-02",
  }),
  defineField({
    key: "costValidUntil",
    label: "Cost valid until",
    kind: "date",
    synonyms: "valid until|valid to|gültig bis|ważne do|giltig till|válido hasta|vigente hasta",
    example: "2027-03-31",
  }),
  defineField({
    key: "bufferHours",
    label: "Buffer",
    kind: "decimal",
    unit: "h",
    min: 0,
    max: 1000,
    synonyms:
      "buffer hours|buffer h|buffer|puffer|puffer h|pufferstunden|bufor|bufor h|buffert|buffert h|colchón|horas de colchón|búfer h",
    example: "1.0",
  }),
  defineField({
    key: "machineCode",
    label: "Machine",
    kind: "code",
    synonyms:
      "machine code|machine no|equipment no|equipment|maschine|maschinen-nr|maschinennummer|maszyna|nr maszyny|kod maszyny|maskin|maskinkod|maskinnr|máquina|código de máquina",
    example: "M01",
  }),
  defineField({
    key: "machineName",
    label: "Machine name",
    kind: "text",
    synonyms:
      "machine description|maschinenname|maschinenbezeichnung|bezeichnung maschine|nazwa maszyny|maskinnamn|nombre de máquina|descripción de máquina",
    example: "Erector",
  }),
  defineField({
    key: "machineInServiceYear",
    label: "Machine in service since",
    kind: "year",
    synonyms:
      "year|machine year|year built|baujahr|baujahr maschine|inbetriebnahme|rok|rok budowy|rok maszyny|år|byggår|tillverkningsår|año|año de máquina|año de fabricación",
    example: "2009",
  }),
  defineField({
    key: "machineRetiredOn",
    label: "Machine retired on",
    kind: "date",
    synonyms:
      "retired on|out of service since|decommissioned on|scrapped on|stillgelegt am|ausser betrieb seit|wycofano z użytku|avvecklad den|fuera de servicio desde",
    example: "",
  }),
  defineField({
    key: "controllerDesignation",
    label: "Controller",
    kind: "code",
    synonyms:
      "controller designation|controller code|plc|steuerung|sps|sterownik|kod sterownika|styrsystem|controlador|plc código",
    example: "VEL-01-K1",
  }),
  defineField({
    key: "controllerModel",
    label: "Controller model",
    kind: "text",
    synonyms:
      "controller type|plc type|steuerungstyp|typ steuerung|sps-typ|typ sterownika|model sterownika|styrsystemtyp|modelo de controlador|tipo de controlador",
    example: "Slate 5",
  }),
  defineField({
    key: "firmware",
    label: "Controller firmware",
    kind: "firmware",
    synonyms:
      "firmware|fw|fw level|firmware version|firmwarestand|wersja firmware|oprogramowanie|mjukvara|firmwareversion|versión de firmware",
    example: "22",
  }),
  defineField({
    key: "memoryPercent",
    label: "Controller memory used",
    kind: "percent",
    unit: "%",
    min: 0,
    max: 100,
    synonyms:
      "memory|memory %|memory used|memory used %|speicher|speicher %|speicherauslastung|pamięć|pamięć %|zajętość pamięci|minne|minne %|memoria|memoria %|memoria usada",
    example: "71",
  }),
  defineField({
    key: "controllerReadOn",
    label: "Controller read on",
    kind: "date",
    synonyms:
      "read on|backup date|last backup|ausgelesen am|gelesen am|odczytano|data odczytu|avläst|avläst den|leído el|fecha de lectura",
    example: "2026-09-14",
  }),
  defineField({
    key: "controllerHardware",
    label: "Controller hardware",
    kind: "code",
    synonyms:
      "hardware|hardware revision|controller hardware revision|hardwarestand|hardwarestand steuerung|rewizja sterownika|hårdvara|hårdvarurevision|revisión de hardware",
    example: "C2",
  }),
  defineField({
    key: "controllerAxisLimit",
    label: "Controller axes at most",
    kind: "integer",
    unit: "axes",
    min: 1,
    max: 1000,
    synonyms:
      "axis limit|max axes|axes at most|achsen maximal|max achsen|maks osi|limit osi|max axlar|axelgräns|ejes máximos|límite de ejes",
    example: "16",
  }),
  defineField({
    key: "leadsLine",
    label: "Controller leads line",
    kind: "code",
    synonyms:
      "leads line|leading controller of|leitsteuerung von|führt linie|sterownik wiodący linii|leder linje|controlador principal de",
    example: "VEL-01",
  }),
  defineField({
    key: "panel",
    label: "Panel",
    kind: "code",
    synonyms:
      "cabinet|enclosure|schaltschrank|schrank|szafa|szafa sterownicza|apparatskåp|skåp|tablero|armario",
    example: "+A1",
  }),
  defineField({
    key: "panelName",
    label: "Panel name",
    kind: "text",
    synonyms: "cabinet name|schrankname|nazwa szafy|skåpnamn|nombre del tablero|nombre del armario",
    example: "Main panel",
  }),
  defineField({
    key: "panelLocation",
    label: "Panel location",
    kind: "text",
    synonyms:
      "cabinet location|where the panel stands|schrankstandort|standort schrank|miejsce szafy|skåpets plats|ubicación del tablero|ubicación del armario",
    example: "behind the machine, left of the gate",
  }),
];
