import { type Choice, defineChoice } from "@/lib/intake/field";

/** The classes of items with the words registers use for them. */
export const ITEM_CLASS_CHOICES: readonly Choice[] = [
  defineChoice(
    "drive",
    "Drive",
    "servo drive|servo amp|servo amplifier|amplifier|inverter axis|inverter|axis module|umrichter|servoumrichter|servoregler|antriebsregler|antrieb|napęd|serwonapęd|serwowzmacniacz|falownik|driv|servodrift|servoförstärkare|omriktare|accionamiento|servoaccionamiento|variador|servoamplificador|convertidor de frecuencia|variateur|servo-variateur|amplificateur servo|azionamento|servoazionamento|servo amp.|amp servo|servo drive amplifier",
  ),
  defineChoice(
    "motor",
    "Motor",
    "servo motor|servomotor|silnik|serwosilnik|motoren|elmotor|motor de eje|moteur|servomoteur|motore|servomotore",
  ),
  defineChoice(
    "controller",
    "Controller",
    "plc|cpu|motion controller|steuerung|sps|sterownik|styrsystem|styrenhet|autómata|controlador|control|automate|contrôleur|controllore",
  ),
  defineChoice(
    "power_supply",
    "Power supply",
    "psu|supply|supply module|netzteil|stromversorgung|zasilacz|nätaggregat|strömförsörjning|fuente|fuente de alimentación|alimentation|alimentatore",
  ),
  defineChoice(
    "io",
    "I/O",
    "i/o|i/o rack|i/o module|inputs and outputs|e/a|ea-modul|e/a-baugruppe|we/wy|moduł we/wy|e/s|módulo e/s|in-/utgångar",
  ),
  defineChoice(
    "hmi",
    "Operator panel",
    "panel|operator terminal|touch panel|bediengerät|bedienpanel|panel operatorski|operatörspanel|panel de operador|pantalla",
  ),
  defineChoice(
    "converter",
    "Fibre converter",
    "media converter|fiber converter|lwl-umsetzer|medienwandler|konwerter|konwerter światłowodowy|fiberomvandlare|mediaomvandlare|convertidor|convertidor de fibra",
  ),
  defineChoice(
    "network_card",
    "Network card",
    "bus card|interface card|communication card|busbaugruppe|netzwerkkarte|karta sieciowa|nätverkskort|busskort|tarjeta de red|tarjeta de bus",
  ),
];
