import type { RegisterKey } from "@/lib/intake/registers";
import type { Language } from "@/seed/registerFiles/habits";

const LANGUAGES: readonly Language[] = ["de", "pl", "sv", "en", "es"];

const PLACE = `
siteCode|Werk|Zakład|Anläggning|Plant|Planta
lineCode|Linie|Linia|Linje|Line|Línea
machineCode|Maschine|Maszyna|Maskin|Machine|Máquina`;

const MAKER = "\nmaker|Hersteller|Producent|Tillverkare|Manufacturer|Fabricante";

// Field, and its header in German, Polish, Swedish, English and Spanish.
const TABLES: Readonly<Record<Exclude<RegisterKey, "lifecycle" | "scans">, string>> = {
  assets: `${PLACE}
siteName|Werkname|Nazwa zakładu|Anläggningsnamn|Plant name|Nombre de planta
country|Land|Kraj|Land|Country|País
timeZone|Zeitzone|Strefa czasowa|Tidszon|Time zone|Zona horaria
currency|Währung|Waluta|Valuta|Currency|Moneda
budgetRate|Budgetkurs|Kurs budżetowy|Växelkurs|Budget rate|Tipo de cambio
lineName|Linienname|Nazwa linii|Linjenamn|Line name|Nombre de línea
shiftsPerWeek|Schichten/Woche|Zmiany na tydzień|Skift per vecka|Shifts per week|Turnos por semana
lineInServiceYear|Inbetriebnahme Linie|Rok uruchomienia linii|Driftår linje|Line year|Año de línea
costPerHour|Stillstandskosten|Koszt godziny|Kostnad per timme|Downtime cost|Costo por hora
costFixed|Fixkosten je Stillstand|Koszt stały postoju|Fast kostnad per stopp|Fixed cost per stop|Costo fijo por paro
costOwner|Freigegeben von|Zatwierdził|Godkänd av|Approved by|Aprobado por
costApprovedOn|Freigabe am|Data zatwierdzenia|Godkänd den|Approved on|Fecha de aprobación
costValidUntil|Gültig bis|Ważne do|Giltig till|Valid until|Vigente hasta
bufferHours|Puffer h|Bufor h|Buffert h|Buffer h|Horas de colchón
machineName|Maschinenname|Nazwa maszyny|Maskinnamn|Machine name|Nombre de máquina
machineInServiceYear|Baujahr|Rok budowy|Byggår|Year built|Año de fabricación
controllerDesignation|Steuerung|Sterownik|Styrsystem|Controller|Controlador
controllerModel|Steuerungstyp|Typ sterownika|Styrsystemtyp|Controller model|Modelo de controlador
firmware|Firmwarestand|Wersja firmware|Firmwareversion|Firmware|Versión de firmware
memoryPercent|Speicher %|Pamięć %|Minne %|Memory %|Memoria %
controllerReadOn|Ausgelesen am|Data odczytu|Avläst den|Read on|Fecha de lectura
controllerHardware|Hardwarestand|Rewizja sterownika|Hårdvara|Hardware revision|Revisión de hardware
controllerAxisLimit|Max Achsen|Maks osi|Max axlar|Max axes|Ejes máximos
leadsLine|Leitsteuerung von|Sterownik wiodący linii|Leder linje|Leads line|Controlador principal de
panel|Schaltschrank|Szafa|Skåp|Cabinet|Tablero
panelName|Schrankname|Nazwa szafy|Skåpnamn|Cabinet name|Nombre del tablero
panelLocation|Schrankstandort|Miejsce szafy|Skåpets plats|Cabinet location|Ubicación del tablero`,
  axes: `${PLACE}
axisCode|Achse|Oś|Axel|Axis|Eje
axisName|Achsbezeichnung|Nazwa osi|Axelnamn|Axis name|Nombre de eje
axisInServiceYear|Baujahr|Rok osi|Axelår|Axis year|Año de eje
networkName|Netzwerk|Sieć|Nätverk|Network|Red
networkKind|Netzart|Rodzaj sieci|Nätverkstyp|Network type|Tipo de red
networkProfileFamily|Profilfamilie|Rodzina profili|Profilfamilj|Profile family|Familia de perfil
ringOrder|Ringplatz|Kolejność w pierścieniu|Ringordning|Ring position|Posición en anillo
nodeAddress|Knotenadresse|Adres węzła|Nodadress|Node address|Dirección de nodo
feedback|Gebertyp|Enkoder|Givartyp|Feedback|Realimentación
driveMaker|Hersteller Antrieb|Producent napędu|Drivtillverkare|Drive maker|Fabricante variador
drivePart|Antrieb Bestellnummer|Nr części napędu|Drift artikelnr|Drive part no|Número de parte drive
driveSerial|Seriennummer Antrieb|Nr seryjny napędu|Serienummer drift|Drive serial|Número de serie drive
motorMaker|Motorhersteller|Producent silnika|Motortillverkare|Motor manufacturer|Fabricante motor
motorPart|Motor Bestellnummer|Nr części silnika|Motor artikelnr|Motor part no|Número de parte motor
motorSerial|Seriennummer Motor|Nr seryjny silnika|Serienummer motor|Motor serial|Número de serie motor
countsPerRev|Inkremente pro Umdrehung|Impulsy na obrót|Pulser per varv|Counts per rev|Pulsos por vuelta
motorRevs|Motorumdrehungen|Obroty silnika|Motorvarv|Motor turns|Vueltas motor
loadRevs|Lastumdrehungen|Obroty obciążenia|Lastvarv|Load turns|Vueltas carga
unitsPerLoadRev|Vorschubkonstante|Droga na obrót|Enheter per varv|Feed constant|Unidades por vuelta
travelUnit|Wegeinheit|Jednostka drogi|Vägenhet|Travel unit|Unidad de recorrido
panel|Schaltschrank|Szafa|Skåp|Cabinet|Tablero
powerCable|Motorleitung|Kabel silnika|Motorkabel|Motor cable|Cable de potencia
powerCableLength|Länge Motorleitung|Długość kabla silnika|Motorkabel längd|Motor cable length|Longitud cable de potencia
powerCableInChain|Motorleitung in Schleppkette|Kabel silnika w prowadniku|Motorkabel i kedja|Motor cable in chain|Cable de potencia en cadena
feedbackCable|Geberleitung|Kabel enkodera|Givarkabel|Encoder cable|Cable de encóder
feedbackCableLength|Länge Geberleitung|Długość kabla enkodera|Givarkabel längd|Encoder cable length|Longitud cable de encóder
feedbackCableInChain|Geberleitung in Schleppkette|Kabel enkodera w prowadniku|Givarkabel i kedja|Encoder cable in chain|Cable de encóder en cadena
travel|Verfahrweg|Droga całkowita|Slaglängd|Stroke|Carrera
hardLow|Hardware-Endlage min|Krańcówka min|Hårdvarugräns min|Hardware limit low|Límite hardware min
hardHigh|Hardware-Endlage max|Krańcówka max|Hårdvarugräns max|Hardware limit high|Límite hardware max
softLow|Software-Endlage min|Limit programowy min|Mjukvarugräns min|Software limit low|Límite software min
softHigh|Software-Endlage max|Limit programowy max|Mjukvarugräns max|Software limit high|Límite software max
homing|Referenzfahrt|Bazowanie|Referenskörning|Homing method|Referenciado
homeOffset|Referenzoffset|Przesunięcie bazy|Referensförskjutning|Home position|Desplazamiento de referencia
surveyedOn|Aufgenommen am|Data pomiaru|Inventerad den|Survey date|Fecha de levantamiento
itemClass|Geräteart|Kategoria|Kategori|Item class|Categoría
designation|Kennzeichen|Oznaczenie|Beteckning|Designation|Designación
itemMaker|Hersteller|Producent|Tillverkare|Manufacturer|Fabricante
itemPart|Bestellnummer|Numer części|Artikelnr|Part number|Número de parte
itemSerial|Seriennummer|Numer seryjny|Serienummer|Serial number|Número de serie`,
  stock: `${PLACE}${MAKER}
bin|Lagerplatz|Lokalizacja|Hylla|Storage location|Ubicación
partNumber|Herstellernummer|Nr katalogowy|Tillverkarens nr|Manufacturer part number|Código fabricante
storeroomNumber|Materialnummer|Indeks materiałowy|Förrådsnummer|Material number|Código interno
revision|Hardwarestand|Rewizja|Revision|Rev|Revisión
description|Kurztext|Nazwa|Benämning|Description|Descripción
quantity|Bestand|Ilość|Antal|Qty|Existencias
state|Zustand|Stan techniczny|Skick|Condition|Estado
lastPoweredOn|Zuletzt bestromt|Ostatnio zasilany|Senast spänningssatt|Last powered|Último encendido
countedOn|Inventurdatum|Data inwentaryzacji|Inventeringsdatum|Count date|Fecha de inventario
reservedFor|Reserviert für|Zarezerwowano dla|Reserverad för|Reserved for|Reservado para
note|Bemerkung|Uwagi|Anmärkning|Remarks|Observaciones`,
  events: `${PLACE}${MAKER}
position|Achse|Pozycja|Axel|Position|Posición
partNumber|Teilenummer|Numer części|Artikelnr|Part number|Número de parte
itemClass|Geräteart|Kategoria|Kategori|Item class|Categoría
kind|Befund|Rodzaj zdarzenia|Händelsetyp|Finding|Hallazgo
happenedAt|Zeitpunkt|Zgłoszono|Tidpunkt|Reported|Fecha y hora
downtimeHours|Stillstand h|Postój h|Stopptid h|Downtime h|Paro h
waitingHours|Wartezeit h|Oczekiwanie na część|Väntetid|Waiting h|Horas de espera
spareAtHand|Ersatzteil vorhanden|Część na miejscu|Reservdel fanns|Spare available|Refacción disponible
source|Quelle|Źródło|Källa|Source|Fuente
reference|Auftragsnummer|Nr zlecenia|Arbetsorder|Work order no|Orden de trabajo
text|Kurztext|Opis|Beskrivning|Short text|Descripción
commonCause|Gemeinsame Ursache|Wspólna przyczyna|Gemensam orsak|Common cause|Causa común
setAside|Nicht gezählt weil|Pominięto|Räknas inte|Excluded because|No cuenta por`,
  backups: `${PLACE}
controllerDesignation|Steuerung|Sterownik|Styrsystem|Controller|Controlador
kind|Inhalt|Zawartość|Innehåll|Kind of copy|Contenido
takenOn|Gesichert am|Data kopii|Tagen den|Backup date|Fecha de copia
keptAt|Ablageort|Miejsce|Plats|Location|Ubicación
verifiedOn|Zurückgespielt am|Odtworzono|Återläst den|Restored on|Restaurado el
sourceAvailable|Quelle vorhanden|Źródło dostępne|Källa finns|Source|Fuente disponible`,
  contacts: `${PLACE}
role|Funktion|Funkcja|Befattning|Duty|Función
phone|Rufnummer|Nr telefonu|Telefonnummer|Phone|Teléfono
hours|Erreichbar|Dostępność|Tider|Hours|Horario
note|Bemerkung|Uwagi|Anmärkning|Remarks|Observaciones`,
  windows: `${PLACE}
name|Betriebsruhe|Postój|Driftstopp|Shutdown|Parada
startsOn|Beginn|Początek|Börjar|Start|Inicio
endsOn|Ende|Koniec|Slutar|End|Fin
usableHours|Nutzbare Stunden|Godziny robocze|Användbara timmar|Working hours|Horas útiles
note|Bemerkung|Uwagi|Anmärkning|Remarks|Observaciones`,
};

/** The header a site gives a field; the group's own file uses the field's name in the register. */
export function headerOf(
  register: Exclude<RegisterKey, "lifecycle" | "scans">,
  language: Language,
  key: string,
): string {
  const row = TABLES[register]
    .trim()
    .split("\n")
    .map((line) => line.split("|"))
    .find(([field]) => field === key);
  const header = row?.[LANGUAGES.indexOf(language) + 1];
  if (!header) throw new RangeError(`key must be a field of ${register} with a header, got ${key}`);
  return header;
}
