import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import type { SiteView } from "@/seed/registerFiles/siteView";

/** One row a machine, or one a panel of it: its site, its line with the cost per hour, its controller. */
export function assetRegister(view: SiteView): RegisterRow[] {
  const { site, lines, machines, controller, tables } = view;
  const rate = tables.CurrencyRate.find(({ currency }) => currency === site.currency);
  return machines.flatMap((machine) => {
    const line = lines.get(machine.lineId);
    const own = controller.get(machine.controllerId);
    if (!line || !own) return [];
    const panels = tables.Panel.filter(({ machineId }) => machineId === machine.id);
    return [...(panels.length === 0 ? [undefined] : panels)].map((panel) => ({
      siteCode: site.code,
      siteName: site.name,
      country: site.country,
      timeZone: site.timeZone,
      currency: site.currency,
      budgetRate: rate?.perEuro ?? null,
      lineCode: line.code,
      lineName: line.name,
      shiftsPerWeek: line.shiftsPerWeek,
      lineInServiceYear: line.inServiceYear,
      costPerHour: line.costPerHour,
      costFixed: line.costFixed,
      costOwner: line.costOwner,
      costApprovedOn: line.costApprovedOn,
      costValidUntil: line.costValidUntil,
      bufferHours: line.bufferHours,
      machineCode: machine.code,
      machineName: machine.name,
      machineInServiceYear: machine.inServiceYear,
      controllerDesignation: own.designation,
      controllerModel: own.model,
      firmware: own.firmwareRaw,
      memoryPercent: own.memoryPercent,
      controllerReadOn: own.readOn,
      controllerHardware: own.hardware,
      controllerAxisLimit: own.axisLimit,
      leadsLine: own.leadsLineId === line.id ? line.code : null,
      panel: panel?.designation ?? null,
      panelName: panel?.name ?? null,
      panelLocation: panel?.location ?? null,
    }));
  });
}
