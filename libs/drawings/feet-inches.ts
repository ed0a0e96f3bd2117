// Lengths the trade's way: 3'-2 1/2".

/**
 * Inches as feet and inches to the nearest sixteenth; whole inches have no fraction. A negative or
 * endless length throws: no sheet has one.
 */
export function feetInches(inches: number): string {
  if (!Number.isFinite(inches) || inches < 0) throw new Error(`${inches} in is not a length`);
  const sixteenths = Math.round(inches * 16);
  const feet = Math.floor(sixteenths / 192);
  const whole = Math.floor((sixteenths % 192) / 16);
  return `${feet}'-${whole}${fraction(sixteenths % 16)}"`;
}

function fraction(sixteenths: number): string {
  if (sixteenths === 0) return '';
  let [over, under] = [sixteenths, 16];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return ` ${over}/${under}`;
}
