import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from "@tarikjabiri/dxf";
import { boundingBox, centroid, type Polygon } from "../geometry/index.ts";
import { inches } from "../picture/index.ts";
import { printable } from "./faces.ts";
import { counted, fabricName, type SheetJob } from "./job.ts";
import { templatesOf } from "./shapes.ts";

/** Layers of the file, as cutting machines and drawing programs keep them apart. */
export const DXF_LAYERS = { cut: "CUT", seam: "SEAM", grain: "GRAIN", label: "LABEL" } as const;

/**
 * Every template as one DXF file (AC1021): cut edges, seams and grain on layers of their own, the unit
 * declared, one unit of the file being one unit of the design. Shapes stand in a row, an inch apart,
 * each with its letters; y is up as in the design, and nothing is mirrored.
 */
export function dxfText(job: SheetJob): string {
  const { unit } = job.brief;
  const dxf = new DxfWriter();
  dxf.setUnits(unit === "in" ? Units.Inches : Units.Millimeters);
  // AutoCAD's own switch between inch and metric line types and hatches: 0 inch, 1 metric.
  dxf.setVariable("$MEASUREMENT", { 70: unit === "in" ? 0 : 1 });
  const colors = { cut: Colors.Red, seam: Colors.Blue, grain: Colors.Green, label: Colors.White };
  for (const [name, layer] of Object.entries(DXF_LAYERS))
    dxf.addLayer(layer, colors[name as keyof typeof colors], "CONTINUOUS");
  const gap = inches(1, unit);
  let x = 0;
  for (const t of templatesOf(job)) {
    const box = boundingBox(t.cut);
    const move = (p: Polygon): Polygon =>
      p.map((v) => ({ x: v.x - box.left + x, y: v.y - box.bottom }));
    closed(dxf, DXF_LAYERS.cut, move(t.cut));
    closed(dxf, DXF_LAYERS.seam, move(t.finished));
    const c = centroid(move(t.finished));
    const half = Math.min(inches(1, unit), (box.right - box.left) / 8);
    dxf.setCurrentLayerName(DXF_LAYERS.grain);
    dxf.addLine(point3d(c.x - half, c.y), point3d(c.x + half, c.y));
    dxf.setCurrentLayerName(DXF_LAYERS.label);
    const size = inches(0.12, unit);
    t.pieces.forEach((p, i) => {
      const text = `${p.letter} ${p.name}, ${counted(p.count, "piece")} of ${fabricName(job, p.fabricId)}`;
      // A line break in a name would begin a new group of the file.
      dxf.addText(point3d(x, -size * (2 + 1.6 * i)), size, printable(text, "sans"));
    });
    x += box.right - box.left + gap;
  }
  return dxf.stringify();
}

function closed(dxf: DxfWriter, layer: string, polygon: Polygon): void {
  dxf.setCurrentLayerName(layer);
  dxf.addLWPolyline(
    polygon.map((v) => ({ point: point2d(v.x, v.y) })),
    { flags: LWPolylineFlags.Closed },
  );
}
