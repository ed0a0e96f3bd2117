// Outlines of the demonstration's screwed ribbed panels, invented: one repeat of the sheet from the
// middle of a flat to the middle of the next, mid-line corners, with every bend at 1/16 in inside.

const BEND_IN = 1 / 16;

/** `flat` between ribs, `rise` and the `run` of each web, `top` of the rib, in inches. */
const RIBS: Readonly<Record<string, { flat: number; run: number; rise: number; top: number }>> = {
  'rib-36': { flat: 7, run: 0.5, rise: 0.75, top: 1 },
  'rib-low-36': { flat: 9.5, run: 0.5, rise: 0.625, top: 1.5 },
  'liner-36': { flat: 6, run: 0.75, rise: 0.5, top: 1.5 },
  'deep-36': { flat: 8.5, run: 1, rise: 1.25, top: 1.5 },
  'box-36': { flat: 3.5, run: 0.5, rise: 1.5, top: 1.5 },
  'deep-24': { flat: 5, run: 0.5, rise: 3, top: 2 },
};

/** Undefined where the profile has no such rib. */
export function outlineOf(profile: string) {
  const rib = RIBS[profile];
  if (!rib) return undefined;
  const { flat, run, rise, top } = rib;
  const foot = flat / 2;
  const corner = (x_in: number, y_in: number) => ({ x_in, y_in, r_inside_in: BEND_IN });
  return [
    { x_in: 0, y_in: 0 },
    corner(foot, 0),
    corner(foot + run, rise),
    corner(foot + run + top, rise),
    corner(foot + 2 * run + top, 0),
    { x_in: flat + 2 * run + top, y_in: 0 },
  ];
}
