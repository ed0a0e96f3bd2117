// Quantities: numbers that carry their unit in the type, so that a wrong unit or a wrong order of
// arguments does not compile. There is no cost at run time. Text made from them is rounded once,
// at the edge, by `display`.

declare const unit: unique symbol;
export type Quantity<U extends string> = number & { readonly [unit]: U };

export type Inches = Quantity<'in'>;
export type Feet = Quantity<'ft'>;
export type SquareFeet = Quantity<'ft2'>;
export type Psf = Quantity<'psf'>;
export type Plf = Quantity<'plf'>;
export type Pcf = Quantity<'pcf'>;
export type Pounds = Quantity<'lb'>;
export type Kips = Quantity<'kip'>;
export type KipInches = Quantity<'kip-in'>;
export type Ksi = Quantity<'ksi'>;
export type Mph = Quantity<'mph'>;
export type Degrees = Quantity<'deg'>;
export type Per12 = Quantity<'per-12'>;
export type Micrometers = Quantity<'um'>;
export type Fahrenheit = Quantity<'degF'>;

export const inches = (v: number): Inches => v as Inches;
export const feet = (v: number): Feet => v as Feet;
export const squareFeet = (v: number): SquareFeet => v as SquareFeet;
export const psf = (v: number): Psf => v as Psf;
export const plf = (v: number): Plf => v as Plf;
export const pcf = (v: number): Pcf => v as Pcf;
export const pounds = (v: number): Pounds => v as Pounds;
export const kips = (v: number): Kips => v as Kips;
export const kipInches = (v: number): KipInches => v as KipInches;
export const ksi = (v: number): Ksi => v as Ksi;
export const mph = (v: number): Mph => v as Mph;
export const degrees = (v: number): Degrees => v as Degrees;
export const per12 = (v: number): Per12 => v as Per12;
export const micrometers = (v: number): Micrometers => v as Micrometers;
export const fahrenheit = (v: number): Fahrenheit => v as Fahrenheit;

export const degreesOfRise = (rise: Per12): Degrees =>
  degrees((Math.atan(rise / 12) * 180) / Math.PI);

/** A quantity as it stands in events and JSON: a decimal string with its unit. */
export interface Amount<U extends string = string> {
  readonly v: string;
  readonly u: U;
}

/** Rounds once, on the value as the machine holds it, and drops the sign of zero. */
export function display(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`not a finite number: ${value}`);
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

export function amount<U extends string>(value: number, decimals: number, u: U): Amount<U> {
  return { v: display(value, decimals), u };
}
