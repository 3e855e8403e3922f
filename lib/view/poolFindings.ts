import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { misfitAt } from "@/lib/retrofit/pieceFits";
import { type OwnShelf, ownOutcome } from "@/lib/spares/ownShelf";
import { stockChance } from "@/lib/spares/stockChance";
import { type Move, proposeTransfers, type TransferSite } from "@/lib/spares/transfers";
import type { StockState } from "@/lib/spares/usableCount";
import { borderBetween, type Country } from "@/lib/view/customs";
import { stockStateName } from "@/lib/view/partShelf";
import { type PoolOfPart, type ProposedMove, type StayingLot, together } from "@/lib/view/poolMoves";
import { heldShares } from "@/lib/view/sparesShares";

/** A site as the moving of a part's pieces sees it. */
export interface SiteOfPool extends Country {
  readonly shelf: OwnShelf;
  readonly code: string;
  readonly name: string;
  readonly units: number;
  readonly stops: number;
  readonly wayLoss: number;
  readonly controllers: readonly ControllerFacts[];
  /** Whether the reader may change stock there. */
  readonly mayWrite: boolean;
}

/** A lot with pieces. */
export interface PoolLot {
  readonly id: string;
  readonly siteId: string;
  readonly bin: string;
  readonly revision: string;
  readonly state: StockState;
  readonly pieces: number;
  /** Chance that each works. */
  readonly works: number;
  /** Asked for or under way to this site: taken as there, and not moved again. */
  readonly promised: boolean;
}

interface Findings {
  readonly sites: readonly SiteOfPool[];
  readonly lots: readonly PoolLot[];
  readonly family: string | null;
  readonly rules: readonly Rule[];
}

interface Terms {
  readonly target: number;
  readonly least: number;
  readonly installed: number;
  readonly usable: number;
  readonly removalRate: number;
}

interface Judged {
  readonly lot: PoolLot;
  readonly goesTo: readonly string[];
  /** Why it goes nowhere, or not to some sites. */
  readonly stays: readonly string[];
}

function judge(lot: PoolLot, { sites, family, rules }: Findings): Judged {
  if (lot.promised) return { lot, goesTo: [], stays: [] };
  if (lot.state !== "usable")
    return { lot, goesTo: [], stays: [`${stockStateName(lot.state)}: only usable pieces are moved`] };
  const piece = { family, revision: lot.revision === "" ? null : lot.revision };
  const others = sites.filter(({ shelf, units }) => shelf.id !== lot.siteId && units > 0);
  const misfits = others.map(({ shelf, code, controllers }) => ({
    ...{ id: shelf.id, code, misfit: misfitAt(piece, rules, controllers) },
  }));
  return {
    lot,
    goesTo: misfits.filter(({ misfit }) => misfit === null).map(({ id }) => id),
    stays: misfits.flatMap(({ code, misfit }) =>
      misfit ? [`Not to ${code}, ${misfit.code}: ${misfit.why}`] : [],
    ),
  };
}

function transferSites(judged: readonly Judged[], { sites }: Findings): TransferSite[] {
  return sites.map(({ shelf }) => ({
    ...shelf,
    lots: judged
      .filter(({ lot }) => lot.siteId === shelf.id)
      .map(({ lot: { id, pieces, works }, goesTo }) => ({ id, count: pieces, works, goesTo })),
  }));
}

/** How each site stands on its own shelf after some moves. */
function standingAfter(sites: readonly TransferSite[], moves: readonly Move[]): ReadonlyMap<string, number> {
  const works = new Map(sites.flatMap(({ lots }) => lots.map((lot) => [lot.id, lot.works])));
  return new Map(
    sites.map((site) => {
      const taken = (lotId: string) => moves.filter((move) => move.lotId === lotId).length;
      const come = moves.filter(({ toId }) => toId === site.id);
      const pieces = [
        ...site.lots.map((lot) => ({ works: lot.works, count: lot.count - taken(lot.id) })),
        ...come.map(({ lotId }) => ({ works: works.get(lotId) ?? 0, count: 1 })),
      ];
      return [site.id, ownOutcome(site, stockChance(pieces)).chance];
    }),
  );
}

function rowsOf(moves: readonly Move[], { sites, lots }: Findings): ProposedMove[] {
  const siteOf = new Map(sites.map((site) => [site.shelf.id, site]));
  const lotOf = new Map(lots.map((lot) => [lot.id, lot]));
  return together(moves).flatMap(({ lotId, fromId, toId, pieces, saves, from, to }) => {
    const [lot, giver, taker] = [lotOf.get(lotId), siteOf.get(fromId), siteOf.get(toId)];
    if (!lot || !giver || !taker) return [];
    return [
      {
        ...{ lotId, bin: lot.bin, revision: lot.revision, pieces, saves, from, to },
        ...{ fromSite: giver.code, toSite: taker.code, toSiteId: toId },
        border: borderBetween(giver, taker),
        mayAsk: giver.mayWrite || taker.mayWrite,
      },
    ];
  });
}

function stayingOf(judged: readonly Judged[], { sites }: Findings): StayingLot[] {
  const codes = new Map(sites.map(({ shelf, code }) => [shelf.id, code]));
  return judged.flatMap(({ lot, stays }) =>
    stays.length === 0
      ? []
      : [
          {
            ...{
              siteCode: codes.get(lot.siteId) ?? "",
              bin: lot.bin,
              revision: lot.revision,
              pieces: lot.pieces,
            },
            why: stays.join("; "),
          },
        ],
  );
}

function shareRows({ sites, lots }: Findings, { installed, usable, removalRate }: Terms) {
  const sum = (siteId: string, value: (lot: PoolLot) => number) =>
    lots.filter((lot) => lot.siteId === siteId && !lot.promised).reduce((all, lot) => all + value(lot), 0);
  const held = sites.map(({ shelf, code, units }) => {
    const working = sum(shelf.id, ({ pieces, works }) => pieces * works);
    return { siteCode: code, units, book: working, usable: working };
  });
  const shares = heldShares([{ installed, book: usable, removalRate, sites: held }]);
  return sites.flatMap((site) => {
    const share = shares.find(({ siteCode }) => siteCode === site.code);
    const onBooks = sum(site.shelf.id, ({ pieces }) => pieces);
    return share ? [{ site, share, onBooks }] : [];
  });
}

/** The sites of a part's pool with their shares, and the moves between them that save most. */
export function poolMoves(findings: Findings, terms: Terms): Pick<PoolOfPart, "sites" | "moves" | "staying"> {
  const judged = findings.lots.map((lot) => judge(lot, findings));
  const shelves = transferSites(judged, findings);
  const moves = proposeTransfers(shelves, { target: terms.target, least: terms.least });
  const [before, after] = [standingAfter(shelves, []), standingAfter(shelves, moves)];
  return {
    sites: shareRows(findings, terms).map(({ site, share, onBooks }) => ({
      ...{ ...share, onBooks, siteId: site.shelf.id, siteName: site.name, currency: site.currency },
      ...{ stops: site.stops, wayLoss: site.wayLoss },
      before: before.get(site.shelf.id) ?? 0,
      after: after.get(site.shelf.id) ?? 0,
    })),
    moves: rowsOf(moves, findings),
    staying: stayingOf(judged, findings),
  };
}
