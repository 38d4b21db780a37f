import type { Brief, Fabric } from "../../brief/index.ts";
import type { Change } from "./word.ts";

/** A fabric with its place in the brief. */
export interface OneFabric {
  readonly brief: Brief;
  readonly fabric: Fabric;
  readonly index: number;
}

export const fabricOf = (b: Brief, id: string): OneFabric | undefined => {
  const index = b.fabrics.findIndex((f) => f.id === id);
  return index < 0 ? undefined : { brief: b, fabric: b.fabrics[index], index };
};

export const wordId = ({ fabric }: OneFabric, what: string): string => `of/${fabric.id}/${what}`;
export const wordPath = ({ index }: OneFabric, key: string): string => `fabrics/${index}/${key}`;

/** A change written on the fabric, if it is still there. */
export const onFabric =
  ({ fabric }: OneFabric, write: (f: Fabric) => void): Change =>
  (d) => {
    const f = d.fabrics.find((x) => x.id === fabric.id);
    if (f) write(f);
  };
