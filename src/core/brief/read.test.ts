import { describe, expect, test } from "vitest";
import { canonicalText, contentHash } from "./canonical.ts";
import { checkNames } from "./check.ts";
import { DEEPEST, LONGEST_TEXT, MOST_VALUES, readBrief, readDocument } from "./read.ts";
import { smallBrief } from "./sample.ts";

const document = (): Record<string, unknown> =>
  structuredClone(smallBrief()) as Record<string, unknown>;
const refusals = (value: unknown) => {
  const r = readDocument(value);
  return r.ok ? [] : r.refusals;
};
const paths = (value: unknown): string[] => refusals(value).map((r) => r.path);

test("a brief reads back as it was written, lengths exactly as typed", () => {
  const r = readBrief(canonicalText(smallBrief()));
  expect(r.ok && r.brief).toEqual(smallBrief());
  expect(r.ok && r.brief.blocks[0]).toMatchObject({ strip: "4 1/2" });
});

test("key order does not change the canonical bytes or the hash", () => {
  const a = document();
  const b = Object.fromEntries(Object.entries(a).reverse());
  expect(canonicalText(b)).toBe(canonicalText(a));
  expect(contentHash(b)).toBe(contentHash(a));
  expect(contentHash({ ...a, seam: "3/8" })).not.toBe(contentHash(a));
});

test('the hash is SHA-256 (FIPS 180-4 example: the digest of "abc" quoted as JSON differs)', () => {
  // Digest of the two bytes {} as printed by coreutils sha256sum.
  expect(contentHash({})).toBe("44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a");
});

describe("refused, with the place named", () => {
  test.each([
    ["not JSON", "{", ""],
    ["an empty text", "", ""],
    ["a list", "[]", ""],
    ["a number", "7", ""],
    ["another format", JSON.stringify({ ...document(), format: "quilt" }), "format"],
    ["a newer version", JSON.stringify({ ...document(), version: 2 }), "version"],
    ["version zero", JSON.stringify({ ...document(), version: 0 }), "version"],
    ["no version", JSON.stringify({ ...document(), version: undefined }), "version"],
    ["no unit", JSON.stringify({ ...document(), unit: undefined }), "unit"],
    ["an unknown unit", JSON.stringify({ ...document(), unit: "cm" }), "unit"],
    ["an unknown key", JSON.stringify({ ...document(), colour: "red" }), "colour"],
  ])("%s", (_, text, path) => {
    const r = readBrief(text);
    expect(r.ok).toBe(false);
    if (!r.ok) {
      expect(r.refusals.map((x) => x.path)).toContain(path);
      for (const x of r.refusals) expect(x.message.length).toBeGreaterThan(5);
    }
  });

  test("an unknown key deep in the brief is named with its path", () => {
    const d = document();
    (d.blocks as Record<string, unknown>[])[0].stripe = "4";
    expect(paths(d)).toContain("blocks/0/stripe");
  });

  test.each(["0", "0 in", "-4", "4 1/0", "a lot", "1e3", "NaN", "99999", "4 1/2 ells", ""])(
    "a strip of %j",
    (strip) => {
      const d = document();
      (d.blocks as Record<string, unknown>[])[0].strip = strip;
      expect(paths(d)).toContain("blocks/0/strip");
    },
  );

  test("a seam of zero and a usable width of zero are named apart", () => {
    const d = document();
    d.seam = "0";
    (d.fabrics as Record<string, unknown>[])[1].usable = "0";
    expect(paths(d).sort()).toEqual(["fabrics/1/usable", "seam"]);
  });

  test("control and direction-changing characters in a name", () => {
    expect(paths({ ...document(), title: "Tide\u0007pool" })).toEqual(["title"]);
    expect(paths({ ...document(), title: "Tide\u202epool" })).toEqual(["title"]);
  });

  test("in plain words, with what stands there", () => {
    const said = (change: object) => refusals({ ...document(), ...change }).map((r) => r.message);
    expect(said({ title: undefined })).toEqual(["expected a text, got nothing"]);
    expect(said({ title: "" })).toEqual(['expected 1 letter or more, got ""']);
    expect(said({ fabrics: [] })).toEqual(["expected 1 entry or more, got an empty list"]);
    expect(said({ ruler: { point: "no" } })).toEqual([
      'expected "sharp" or a group of named values, got "no"',
    ]);
    const [block] = document().blocks as object[];
    expect(said({ blocks: [{ ...block, kind: "round" }] })).toEqual([
      'expected "wedges" or "own" or "unit", got "round"',
    ]);
    expect(said({ blocks: [{ ...block, n: 7 }] })).toEqual([
      "expected 6 or 8 or 10 or 12 or 16, got 7",
    ]);
  });

  test("more values than any brief holds, before each is looked at", () => {
    const notes = new Array(MOST_VALUES).fill(0);
    expect(refusals({ ...document(), notes })[0].message).toContain(String(MOST_VALUES));
    const list = `[${"[],".repeat(MOST_VALUES)}[]]`;
    const text = JSON.stringify(document()).replace("{", `{"notes":${list},`);
    expect(readBrief(text).ok).toBe(false);
  });

  test("a text longer than any brief, before it is parsed", () => {
    const read = readBrief(" ".repeat(LONGEST_TEXT + 1));
    expect(read.ok || read.refusals).toEqual([
      { path: "", message: `the brief is larger than ${LONGEST_TEXT} characters` },
    ]);
  });

  test("a thousand faults, told shortly", () => {
    const wrong = Object.fromEntries(
      Array.from({ length: 1000 }, (_, i) => [`${"k".repeat(900)}${i}`, 1]),
    );
    const blocks = new Array(90).fill(7);
    for (const all of [
      refusals({ ...document(), ...wrong }),
      refusals({ ...document(), blocks }),
    ]) {
      expect(all).toHaveLength(61);
      expect(all.at(-1)?.message).toMatch(/^and \d+ more/);
      for (const r of all) expect(r.path.length + r.message.length).toBeLessThan(300);
    }
  });

  test("nesting beyond reason, without running out of stack", () => {
    let deep: unknown = 1;
    for (let i = 0; i < 5000; i++) deep = [deep];
    expect(refusals({ ...document(), notes: deep })[0].message).toContain(String(DEEPEST));
  });
});

test("keys that start x- and anything under notes are let through", () => {
  const d = document();
  d["x-shelf"] = { row: 4 };
  d.notes = { anything: [1, { at: "all" }] };
  (d.blocks as Record<string, unknown>[])[0]["x-seen"] = true;
  expect(refusals(d)).toEqual([]);
});

test("a byte order mark before the brief is not an error", () => {
  expect(readBrief(`\uFEFF${canonicalText(smallBrief())}`).ok).toBe(true);
});

test("prototype keys are data, not behavior", () => {
  const text = canonicalText(smallBrief()).replace(
    '"title"',
    '"__proto__": {"polluted": true}, "title"',
  );
  const r = readBrief(text);
  expect(r.ok).toBe(false);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});

describe("names are checked as findings", () => {
  const finding = (change: Parameters<typeof smallBrief>[0]) => checkNames(smallBrief(change));

  test("a complete brief has none", () => {
    expect(checkNames(smallBrief())).toEqual([]);
  });

  test("a fabric named but not defined", () => {
    const [block] = smallBrief().blocks;
    expect(
      finding({ blocks: [{ ...block, fabric: { wedge: "red", kite: "blue" } }] }),
    ).toMatchObject([
      {
        code: "fabric-not-defined",
        severity: "blocks",
        place: "blocks/0/fabric/kite",
        words: { fabric: "blue", known: "red, sand" },
      },
    ]);
  });

  test("a block named but not defined", () => {
    expect(finding({ quilt: { rows: 1, columns: 2, plan: [["star", "moon"]] } })).toMatchObject([
      { code: "block-not-defined", place: "quilt/plan/0/1" },
    ]);
  });

  test("a name used twice", () => {
    const [block] = smallBrief().blocks;
    expect(finding({ blocks: [block, block] })).toMatchObject([
      { code: "id-twice", place: "blocks/1/id" },
    ]);
  });

  test("ten thousand by ten thousand blocks", () => {
    expect(finding({ quilt: { rows: 10_000, columns: 10_000, plan: [["star"]] } })).toMatchObject([
      { code: "too-many-blocks", place: "quilt", found: 100_000_000, needed: 10_000 },
    ]);
  });
});
