import {
  colorSummary,
  cropped,
  findRepeat,
  findStripe,
  type Pixels,
  type Progress,
  Shrinker,
  type StripeFound,
  sniffImage,
  straightened,
} from "../../../core/fabric/index.ts";
import type { Finding } from "../../../core/findings/index.ts";
import type { Ask, Box, Found, Opened, Reply } from "./messages.ts";

/** Longer side of the picture that is kept and searched, in pixels. */
const LONGEST = 1200;
/** Rows of a large picture that are in memory as bytes at one time. */
const SLAB = 256;

let pixels: Pixels | null = null;

const post = (r: Reply): void => postMessage(r);

class Refused extends Error {
  readonly finding: Finding;
  constructor(finding: Finding) {
    super(finding.code);
    this.finding = finding;
  }
}

addEventListener("message", async ({ data }: MessageEvent<Ask>) => {
  try {
    if (data.ask === "open")
      post({ reply: "opened", opened: await opened(data.file, data.fabric) });
    else post({ reply: "found", found: await found(data.angle, data.crop) });
  } catch (e) {
    if (e instanceof Refused) post({ reply: "refused", finding: e.finding });
    else post({ reply: "failed", message: (e as Error).message });
  }
});

/** Looked at by its first bytes before anything decodes it; then made small, row by row. */
async function opened(file: Blob, fabric: string): Promise<Opened> {
  const sniffed = sniffImage(new Uint8Array(await file.arrayBuffer()), fabric);
  if (!sniffed.ok) throw new Refused(sniffed.finding);
  const type = `image/${sniffed.image.kind}`;
  const bitmap = await createImageBitmap(new Blob([file], { type })).catch(() => {
    throw new Refused({ code: "photo-truncated", severity: "draft", place: fabric });
  });
  let solid = true;
  try {
    const read = inSlabs(bitmap);
    pixels = read.pixels;
    solid = read.solid;
  } finally {
    bitmap.close();
  }
  const { width, height } = pixels;
  // A picture may have room for see-through parts, and none.
  const notes = sniffed.findings.filter((f) => !(solid && f.code === "photo-flattened"));
  return { width, height, picture: await encoded(pixels), notes };
}

function inSlabs(bitmap: ImageBitmap): { readonly pixels: Pixels; readonly solid: boolean } {
  const { width, height } = bitmap;
  const work = new Shrinker(width, height, LONGEST);
  const canvas = new OffscreenCanvas(width, Math.min(SLAB, height));
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("this browser gives no canvas to read a picture with");
  let solid = true;
  for (let y = 0; y < height; y += SLAB) {
    const rows = Math.min(SLAB, height - y);
    context.clearRect(0, 0, width, rows);
    context.drawImage(bitmap, 0, y, width, rows, 0, 0, width, rows);
    const { data } = context.getImageData(0, 0, width, rows);
    for (let i = 3; solid && i < data.length; i += 4) solid = data[i] === 255;
    work.push(data);
    post({ reply: "progress", done: y / height });
  }
  return { pixels: work.finish(), solid };
}

/** A surely found stripe straightens the picture by itself; a stripe on its side is left so. */
const MOST_SKEW = 20;
const LEAST_SKEW = 0.2;

async function found(angle: number, crop: Box): Promise<Found> {
  if (!pixels) throw new Error("no picture is open");
  const { left, top, right, bottom } = crop;
  const part = cropped(pixels, left, top, right - left, bottom - top);
  const turned = angle === 0 ? part : told(straightened(part, angle), 0, 0.2);
  const stripe = told(findStripe(turned), 0.2, 0.6);
  const skew = Math.abs(stripe.angle);
  const askew = angle === 0 && stripe.sure && skew > LEAST_SKEW && skew < MOST_SKEW;
  const level = askew ? told(straightened(turned, -stripe.angle), 0.6, 0.7) : turned;
  const repeat = told(findRepeat(level), 0.7, 1);
  const data = new FileReaderSync().readAsDataURL(await encoded(level));
  const { width, height } = level;
  const tilt = askew ? 0 : tiltOf(stripe);
  return { width, height, data, color: colorSummary(level).color, tilt, stripe, repeat };
}

/** A direction that is not sure is taken as level or upright: by hand one marks along the picture. */
const tiltOf = ({ sure, angle }: StripeFound): number =>
  sure ? angle : Math.abs(angle) > 45 ? 90 * Math.sign(angle) : 0;

/** Runs work to its end, telling how far it is as a share of the whole. */
function told<T>(work: Generator<Progress, T>, from: number, to: number): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    post({ reply: "progress", done: from + step.value.done * (to - from) });
  }
}

function encoded(p: Pixels): Promise<Blob> {
  const canvas = new OffscreenCanvas(p.width, p.height);
  const image = new ImageData(new Uint8ClampedArray(p.data), p.width, p.height);
  canvas.getContext("2d")?.putImageData(image, 0, 0);
  return canvas.convertToBlob({ type: "image/jpeg", quality: 0.85 });
}
