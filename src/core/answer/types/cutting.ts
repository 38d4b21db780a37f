import type {
  CuttingOrder,
  HandsNeeded,
  LedgerRow,
  Sheet,
  SheetPlan,
  WasteOffer,
  WasteWedge,
  WidthChanges,
} from "../../layout/index.ts";
import type { Length } from "../../measure/index.ts";

/** Lefts and rights of one piece, by each way of laying the fabric. */
export interface HandsLedger {
  /** The piece, and the one that is it turned over where both are needed. */
  readonly pieceIds: readonly string[];
  readonly needed: HandsNeeded;
  /** Fewest cuts first. */
  readonly rows: readonly LedgerRow[];
}

/** Copies that lie point up and point down along their strips. */
export interface WaysLaid {
  readonly demandId: string;
  readonly up: number;
  readonly down: number;
}

/** A cutting order, and what is cut: "bolt", or the id of a piece in hand or an offcut. */
export interface OrderFrom extends CuttingOrder {
  readonly from: string;
}

/** What a fabric's next narrower width changes, where its pieces still fit on it. */
export interface Narrower extends WidthChanges {
  readonly fabricId: string;
  readonly width: Length;
}

/** What the cutting table needs to know of one fabric, beside its layout. */
export interface FabricCutting {
  readonly fabricId: string;
  /** Sets to sew, of a fabric that is a strip set: one for each strip of its layout. */
  readonly sets?: number;
  /** What is cut from pieces in hand and from offcuts of the long cuts; these are the pieces. */
  readonly pieces?: SheetPlan;
  readonly sheets?: readonly Sheet[];
  /** Pieces in hand first, then the bolt, then what its long cuts leave. */
  readonly orders: readonly OrderFrom[];
  readonly hands: readonly HandsLedger[];
  readonly ways: readonly WaysLaid[];
  /** True wedges that fall off, and the needs they would serve. The plan does not count on them. */
  readonly waste: readonly WasteWedge[];
  readonly offers: readonly WasteOffer[];
  /** What the next narrower width changes, where one is given and every piece still fits on it. */
  readonly narrower?: Narrower;
}
