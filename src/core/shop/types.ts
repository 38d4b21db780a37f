import type { Finding } from "../findings/index.ts";
import type { Unit } from "../measure/index.ts";
import type { Ticks } from "./ticks.ts";

/** One bolt, or one piece long enough to be cut like one. Lengths and money as typed. */
export interface Bolt {
  readonly id: string;
  readonly name: string;
  /** Usable width; absent: its fabric's. */
  readonly width?: string;
  readonly length: string;
  /** For one yard, or one meter where the shelf is metric; without a sign. */
  readonly price?: string;
  readonly note?: string;
}

/** The shop's own bolts: no part of any design. */
export interface Shelf {
  readonly format: "eighthwise-shelf";
  readonly version: 1;
  readonly unit: Unit;
  readonly bolts: readonly Bolt[];
}

/** What one kit takes of one fabric, from a bolt of one width. */
export interface KitCut {
  readonly fabricId: string;
  /** Usable width it was worked out for. */
  readonly width: Ticks;
  readonly length: Ticks;
  /** Whole repeats, where the fabric is cut by them. */
  readonly repeats?: { readonly count: number; readonly period: Ticks };
}

/** One fabric of the kit. */
export interface KitFabric {
  readonly fabricId: string;
  readonly name: string;
  readonly letter: string;
  readonly uses: string;
  /** At the design's own width; absent when the design cannot be cut from it. */
  readonly cut?: KitCut;
  readonly bolts: readonly {
    readonly boltId: string;
    readonly cut: KitCut;
    readonly cuts: number;
  }[];
  /** Kits this fabric would give if it alone counted. */
  readonly most: number;
}

/** One cut of the run sheet. Lengths from the bolt's raw end. */
export interface RunCut {
  readonly kit: number;
  readonly fabricId: string;
  readonly length: Ticks;
  /** What this cut loses before it: reaching the next start, squaring the end. */
  readonly loss: Ticks;
  readonly soFar: Ticks;
  readonly left: Ticks;
}

/** All cuts from one bolt, in order. */
export interface BoltRun {
  readonly boltId: string;
  readonly name: string;
  /** As the shelf has it: dye lot, place. */
  readonly note?: string;
  readonly length: Ticks;
  readonly width: Ticks;
  readonly straighten: Ticks;
  readonly cuts: readonly RunCut[];
  readonly used: Ticks;
  readonly left: Ticks;
}

/** What stands in the way of one kit more (or of the number wanted). */
export interface Limit {
  readonly fabricIds: readonly string[];
  readonly kits: number;
  /** The least that one of its bolts would have to be longer; from nothing where it has no bolt. */
  readonly short: Ticks;
  readonly boltId?: string;
}

/** A change of mind, worked out in full: so many kits instead. */
export type Way =
  | { readonly kind: "trimmed"; readonly kits: number }
  | { readonly kind: "no-wrong-strip"; readonly kits: number }
  | {
      readonly kind: "instead" | "as-well";
      readonly kits: number;
      readonly fabricId: string;
      readonly boltId: string;
    };

export interface KitPlan {
  readonly unit: Unit;
  readonly title: string;
  /** To be cut: what is wanted, or the most there are. */
  readonly kits: number;
  readonly wanted?: number;
  readonly most: number;
  /** The search saw every way; else no more than `atMost` can be cut. */
  readonly proven: boolean;
  readonly atMost: number;
  readonly fabrics: readonly KitFabric[];
  readonly limits: readonly Limit[];
  readonly ways: readonly Way[];
  readonly runs: readonly BoltRun[];
  readonly findings: readonly Finding[];
}
