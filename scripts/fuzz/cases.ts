import { answerBrief } from "../../src/core/answer/index.ts";
import { type Brief, contentHash, readBrief } from "../../src/core/brief/index.ts";
import { sniffImage } from "../../src/core/fabric/photo/index.ts";
import { say } from "../../src/core/findings/index.ts";
import { stepOf } from "../../src/core/measure/index.ts";
import { asked, ofAsked } from "./asked.ts";
import { type CommandCase, command, ofCommand } from "./command.ts";
import { design } from "./design.ts";
import { bytes, harmed, harmedText } from "./harm.ts";
import { type Broken, broken } from "./laws.ts";
import { list, ofList } from "./list.ts";
import { type Luck, luckOf } from "./luck.ts";
import { photo } from "./photo.ts";
import { ofPixels, pixels } from "./pixels.ts";
import { SHOP_LAWS } from "./shop-laws.ts";
import { whole } from "./whole.ts";
import { ofWords, words } from "./words.ts";

export const KINDS = [
  "bytes",
  "text",
  "harmed",
  "design",
  "list",
  "photo",
  "whole",
  "asked",
  "command",
  "words",
  "pixels",
] as const;
export type Kind = (typeof KINDS)[number];

/** How often each kind is drawn, in 100. */
const SHARE: Readonly<Record<Kind, number>> = {
  bytes: 16,
  text: 36,
  harmed: 17,
  design: 1,
  list: 12,
  photo: 18,
  // Drawn instead of another kind: see `kindAt`.
  whole: 0,
  asked: 0,
  command: 0,
  words: 0,
  pixels: 0,
};

export interface Plan {
  readonly seed: number;
  /** How many sound designs there are to harm: few of them, and most that is accepted was met before. */
  readonly bases: number;
  /** Draw only cases of this kind. */
  readonly kind?: Kind;
}

export interface Outcome {
  readonly kind: Kind;
  /** "known" is accepted, and alike in all that counts to a brief whose laws were asked already. */
  readonly end: "refused" | "accepted" | "known";
  readonly broken: readonly Broken[];
}

/** Cases that are plain data of their own, and how each is drawn. */
const DATA: Readonly<Partial<Record<Kind, (luck: Luck) => unknown>>> = {
  asked,
  command,
  words,
  pixels,
};

/** The document or the bytes of one case, drawn again from seed and number alone. */
export function drawn(plan: Plan, number: number): { kind: Kind; input: string | Uint8Array } {
  const luck = luckOf(plan.seed, number);
  const kind = kindAt(plan, number, luck);
  const data = DATA[kind];
  if (data) return { kind, input: JSON.stringify(data(luck)) };
  if (kind === "whole") {
    const made = whole(luck);
    return { kind, input: JSON.stringify(luck.once(2) ? harmed(made, luck) : made) };
  }
  if (kind === "bytes") return { kind, input: bytes(luck) };
  if (kind === "photo") return { kind, input: photo(luck) };
  if (kind === "list") return { kind, input: list(luck) };
  if (kind === "design") return { kind, input: JSON.stringify(design(luck)) };
  const base = design(luckOf(plan.seed, -2 - luck.int(0, plan.bases - 1)));
  return {
    kind,
    input:
      kind === "text"
        ? harmedText(JSON.stringify(base, null, luck.int(0, 2)), luck)
        : JSON.stringify(harmed(base, luck)),
  };
}

/**
 * What kind a case is. What a design carries and what is typed beside it came later: they are drawn
 * by a luck of their own, so that cases that were found before are drawn as they were.
 */
function kindAt(plan: Plan, number: number, luck: Luck): Kind {
  if (plan.kind) return plan.kind;
  const kind = kindOf(luck.int(1, 100));
  // A class is dear to plan: few are.
  const later = luckOf(plan.seed ^ 0x5eed, number).int(1, 2000);
  if (later <= 164) return later <= 4 ? "whole" : "asked";
  const latest = luckOf(plan.seed ^ 0xadd, number).int(1, 1000);
  return latest <= 4 ? "command" : latest <= 12 ? "words" : latest <= 16 ? "pixels" : kind;
}

function kindOf(hundredth: number): Kind {
  let left = hundredth;
  for (const kind of KINDS) {
    left -= SHARE[kind];
    if (left <= 0) return kind;
  }
  return "text";
}

/** Runs one case as `runCase` does; a command line takes its own time. */
export async function runAny(plan: Plan, number: number, met: Met): Promise<Outcome> {
  const kind = kindAt(plan, number, luckOf(plan.seed, number));
  if (kind !== "command") return runCase(plan, number, met);
  const input = JSON.parse(drawn(plan, number).input as string) as CommandCase;
  return { kind, ...(await ofCommand(input)) };
}

/** Runs one case: read, and if accepted answered and held against the laws. */
export function runCase(plan: Plan, number: number, met = new Met()): Outcome {
  const { kind, input } = drawn(plan, number);
  if (kind === "photo") return { kind, ...ofPhoto(input as Uint8Array) };
  if (kind === "list") {
    const unit = number % 2 ? "in" : "mm";
    return { kind, end: "accepted", broken: ofList(input as string, unit) };
  }
  if (kind === "asked")
    return { kind, end: "accepted", broken: ofAsked(JSON.parse(input as string)) };
  if (kind === "words")
    return { kind, end: "accepted", broken: ofWords(JSON.parse(input as string)) };
  if (kind === "pixels")
    return { kind, end: "accepted", broken: ofPixels(JSON.parse(input as string)) };
  const text = typeof input === "string" ? input : decoded(input);
  if (text === undefined) return { kind, end: "refused", broken: [] };
  const read = readBrief(text);
  const spoiled = ({} as { spoiled?: unknown }).spoiled !== undefined;
  const harm: Broken[] = spoiled ? [{ law: "no key reaches a prototype", detail: "it did" }] : [];
  if (!read.ok) return { kind, end: "refused", broken: [...harm, ...refusal(read.refusals)] };
  if (kind === "whole") {
    const found = broken(read.brief, false, answerBrief(read.brief), SHOP_LAWS);
    return { kind, end: "accepted", broken: [...harm, ...found] };
  }
  if (!met.first(read.brief)) return { kind, end: "known", broken: harm };
  const dear = luckOf(plan.seed, number).once(12);
  return { kind, end: "accepted", broken: [...harm, ...broken(read.brief, dear)] };
}

/** As a file is read: UTF-8 or nothing. */
function decoded(input: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(input);
  } catch {
    return undefined;
  }
}

const MOST_REFUSALS = 200;
const LONGEST_REFUSAL = 1000;

function refusal(refusals: readonly { path: string; message: string }[]): Broken[] {
  const law = "a refusal says where and why, shortly";
  if (refusals.length === 0 || refusals.length > MOST_REFUSALS)
    return [{ law, detail: `${refusals.length} refusals` }];
  return refusals
    .filter(({ path, message }) => {
      const sound = message.length > 5 && !/undefined|\[object/.test(message);
      return !sound || path.length + message.length > LONGEST_REFUSAL;
    })
    .slice(0, 3)
    .map((r) => ({ law, detail: `${r.path}: ${r.message}`.slice(0, 300) }));
}

const INCH = { step: stepOf("1/8", "in") };

function ofPhoto(bytes: Uint8Array): Pick<Outcome, "end" | "broken"> {
  const sniffed = sniffImage(bytes, "reef");
  const findings = sniffed.ok ? sniffed.findings : [sniffed.finding];
  const unsaid = findings.filter((f) => f.place === "" || say(f, INCH).length < 15);
  return {
    end: sniffed.ok ? "accepted" : "refused",
    broken: unsaid.map((f) => ({
      law: "every finding has its place and its sentence",
      detail: f.code,
    })),
  };
}

/** Remembers which designs were answered, by all that bears on a number; forgets the oldest. */
export class Met {
  readonly #hashes = new Set<string>();
  readonly #most: number;

  constructor(most = 20_000) {
    this.#most = most;
  }

  first(brief: Brief): boolean {
    const { title: _t, notes: _n, record: _r, shop: _s, class: _c, ...rest } = brief;
    const bare = {
      ...rest,
      fabrics: rest.fabrics.map(({ name: _name, color: _color, ...f }) => f),
    };
    const hash = contentHash(bare).slice(0, 16);
    if (this.#hashes.has(hash)) return false;
    this.#hashes.add(hash);
    if (this.#hashes.size > this.#most)
      for (const oldest of this.#hashes) {
        this.#hashes.delete(oldest);
        break;
      }
    return true;
  }
}
