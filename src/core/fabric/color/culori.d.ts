/** culori 4.0.2 brings no types; only what is used here is declared. */
declare module "culori/fn" {
  export interface Lab65 {
    readonly mode: "lab65";
    readonly l: number;
    readonly a: number;
    readonly b: number;
  }
  export const modeLab65: unique symbol;
  export function useMode(mode: unknown): unknown;
  export function differenceCiede2000(): (a: Lab65, b: Lab65) => number;
}
