export interface Installed {
  readonly place: string;
  readonly license: string;
  readonly tool: boolean;
}
export function allows(expression: string, allowed: readonly string[]): boolean;
export function installed(root: string): Installed[];
export function refused(packages: readonly Installed[]): Installed[];
export function knownFaults(
  said: string | null,
): { readonly total: number; readonly grave: number } | undefined;
