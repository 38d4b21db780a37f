import {
  type AlikeOctagon,
  type AlikeSearch,
  mostDifferent,
  type Pixels,
} from "../../../../core/fabric/index.ts";

/** A search whose picture is still a data: address. */
export interface AlikeAsk extends Omit<AlikeSearch, "pixels"> {
  readonly data: string;
}

export type AlikeReply =
  | { readonly reply: "progress"; readonly done: number }
  | { readonly reply: "failed"; readonly message: string }
  | { readonly reply: "found"; readonly octagons: readonly AlikeOctagon[] };

/** Longer side of the picture that is searched, in pixels: finer detail is not told apart in a wedge. */
const LONGEST = 600;

const post = (r: AlikeReply): void => postMessage(r);

addEventListener("message", async ({ data: ask }: MessageEvent<AlikeAsk>) => {
  try {
    const work = mostDifferent({ ...ask, pixels: await pixelsOf(ask.data) });
    for (;;) {
      const step = work.next();
      if (step.done) return post({ reply: "found", octagons: step.value });
      post({ reply: "progress", done: step.value.done });
    }
  } catch (e) {
    post({ reply: "failed", message: (e as Error).message });
  }
});

/** The page's policy fetches nothing, not even data: addresses; so the bytes are read by hand. */
async function pixelsOf(data: string): Promise<Pixels> {
  const [head, body] = data.split(",", 2);
  const bytes = Uint8Array.from(atob(body ?? ""), (c) => c.charCodeAt(0));
  const type = /^data:([^;]+)/.exec(head)?.[1] ?? "image/jpeg";
  const bitmap = await createImageBitmap(new Blob([bytes], { type }));
  const share = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * share));
  const height = Math.max(1, Math.round(bitmap.height * share));
  const context = new OffscreenCanvas(width, height).getContext("2d");
  if (!context) throw new Error("this browser gives no canvas to read a picture with");
  context.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  return { width, height, data: context.getImageData(0, 0, width, height).data };
}
