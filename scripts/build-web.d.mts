export interface Site {
  config: string;
  out: string;
}
export const PAGE: Site;
export function needsBuild(site: Site, more?: readonly string[]): boolean;
export function buildIfNeeded(site: Site, more?: readonly string[]): void;
