/** A picture's canvas from its data: address, no side longer than `longest`. Workers only. */
export async function canvasOf(
  data: string,
  longest = Number.POSITIVE_INFINITY,
): Promise<{ canvas: OffscreenCanvas; context: OffscreenCanvasRenderingContext2D }> {
  // The page's policy fetches nothing, not even data: addresses; so the bytes are read by hand.
  const [head, body] = data.split(",", 2);
  const bytes = Uint8Array.from(atob(body ?? ""), (c) => c.charCodeAt(0));
  const type = /^data:([^;]+)/.exec(head)?.[1] ?? "image/jpeg";
  const bitmap = await createImageBitmap(new Blob([bytes], { type }));
  const share = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * share));
  const height = Math.max(1, Math.round(bitmap.height * share));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("this browser gives no canvas to read a picture with");
  context.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  return { canvas, context };
}
