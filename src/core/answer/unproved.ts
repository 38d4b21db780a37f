import type { Brief } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import type { Piece } from "../piece/types.ts";
import { wordsOf } from "./words/choices.ts";

/**
 * Words of the sentence whose number is not proved: for every finding that is more than advice, the
 * word that decides its place (a piece's own cut size first, then its strip, then its setting).
 */
export function unprovedWords(
  b: Brief,
  pieces: readonly Piece[],
  findings: readonly Finding[],
): string[] {
  const words = wordsOf(b);
  const ids = new Set<string>();
  for (const f of findings) {
    if (f.severity === "advice") continue;
    const piece = pieces.find((p) => p.id === f.place || f.place === p.letter);
    const roles = piece
      ? piece.patchIds.flatMap((id) =>
          piece.roles.map((role) => ({ block: id.split("/")[0], role })),
        )
      : [];
    for (const { block, role } of roles) {
      const fits = words.filter((w) =>
        w.decides.some((d) => d.role === role && (d.block === undefined || d.block === block)),
      );
      const word = ["cut/", "strip/", "side/", "setting/"]
        .map((start) => fits.find((w) => w.id.startsWith(start)))
        .find(Boolean);
      if (word) ids.add(word.id);
    }
    if (!piece) for (const id of wordsOfPlace(words, f.place)) ids.add(id);
  }
  return [...ids];
}

/** A block, border or the quilt named by its own id. */
function wordsOfPlace(words: ReturnType<typeof wordsOf>, place: string): string[] {
  if (/^border/.test(place)) return words.filter((w) => w.id === "borders").map((w) => w.id);
  if (place === "quilt") return ["grid"];
  return words
    .filter((w) => w.id === `side/${place}` || w.id === `setting/${place}`)
    .slice(-1)
    .map((w) => w.id);
}
