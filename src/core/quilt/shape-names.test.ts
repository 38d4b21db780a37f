import { describe, expect, test } from "vitest";
import { type Point, type Polygon, point } from "../geometry/index.ts";
import { nameShape } from "./shape-names.ts";

const SLACK = 1e-7;
const turned = (p: Polygon, degrees: number, at = point(0, 0)): Polygon => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return p.map((v) => point(at.x + v.x * c - v.y * s, at.y + v.x * s + v.y * c));
};
const round = (p: Polygon, n: number, at?: Point): Polygon[] =>
  Array.from({ length: n }, (_, i) => turned(p, (360 / n) * i + 11, at));
const away = point(31.7, -12.4);

/** A kite with its right angle at the origin and its point 5.1 away. */
const kite: Polygon = [point(0, 0), point(1.4, -1.4), point(5.1, 0), point(1.4, 1.4)];
const blade: Polygon = [point(0, 0), point(3, 0), point(3, 1.2)];

describe("names, wherever the figure lies and however it is turned", () => {
  test("four kites by their right angles: a star of four points", () => {
    expect(nameShape(round(kite, 4, away), SLACK)).toEqual({ shape: "star", points: 4 });
  });
  test("eight narrow ones: a star of eight", () => {
    const narrow: Polygon = [point(0, 0), point(1.2, -0.4), point(5.1, 0), point(1.2, 0.4)];
    expect(nameShape(round(narrow, 8, away), SLACK)).toEqual({ shape: "star", points: 8 });
  });
  test("a blunt star: its points are counted by the hollows, not by its corners", () => {
    const blunt: Polygon = [point(0, 0), point(2, -0.8), point(4, -1), point(4, 1), point(2, 0.8)];
    expect(nameShape(round(blunt, 4), SLACK)).toEqual({ shape: "star", points: 4 });
  });
  test("blades with no mirror: a pinwheel, of four or of six", () => {
    expect(nameShape(round(blade, 4, away), SLACK)).toEqual({ shape: "pinwheel", points: 4 });
    expect(nameShape(round(blade, 6), SLACK)).toEqual({ shape: "pinwheel", points: 6 });
  });
  test("eight bars round an empty middle: a ring; seven leave it open", () => {
    const t = Math.tan(Math.PI / 8);
    const bar: Polygon = [point(3, -3 * t), point(4, -4 * t), point(4, 4 * t), point(3, 3 * t)];
    expect(nameShape(round(bar, 8, away), SLACK)).toEqual({ shape: "ring", points: 0 });
    expect(nameShape(round(bar, 8).slice(1), SLACK)?.shape).not.toBe("ring");
  });
  test("four right triangles by their square corners: a square; two wedges base to base: a diamond", () => {
    const corner: Polygon = [point(0, 0), point(2.3, 0), point(0, 2.3)];
    expect(nameShape(round(corner, 4, away), SLACK)).toEqual({ shape: "square", points: 4 });
    const wedge: Polygon = [point(0, -1.5), point(3.6, 0), point(0, 1.5)];
    expect(nameShape(round(wedge, 2, away), SLACK)).toEqual({ shape: "diamond", points: 4 });
  });
  test("how a figure is parted does not matter: a square of one triangle and two halves of one", () => {
    const parts: Polygon[] = [
      [point(0, 0), point(4, 0), point(4, 4)],
      [point(0, 0), point(4, 4), point(2, 4)],
      [point(0, 0), point(2, 4), point(0, 4)],
    ];
    expect(nameShape(parts, SLACK)).toEqual({ shape: "square", points: 4 });
  });
  test("two triangles point to point, whose corners lie as a square's do, are no star", () => {
    const half: Polygon = [point(0, 0), point(2, 0), point(0, 2)];
    expect(nameShape([half, turned(half, 180)], SLACK)).toBeUndefined();
  });
  test("an uneven heap has no name", () => {
    expect(nameShape([kite, turned(blade, 40)], SLACK)).toBeUndefined();
  });
});
