// Sums of decimal text, exact: money and weights on an order are never rounded on the way.

/** The sum as decimal text, with as many decimals as the finest part. Throws on other text. */
export function sumOf(parts: readonly string[]): string {
  const decimals = Math.max(0, ...parts.map((each) => each.split('.')[1]?.length ?? 0));
  const sum = parts.reduce((total, each) => total + scaled(each, decimals), 0n);
  return unscaled(sum, decimals);
}

/** Count times an amount, exact. */
export function times(count: number, amount: string): string {
  const decimals = amount.split('.')[1]?.length ?? 0;
  return unscaled(BigInt(count) * scaled(amount, decimals), decimals);
}

function scaled(text: string, decimals: number): bigint {
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw new Error(`"${text}" is not a decimal number`);
  const [whole = '0', part = ''] = text.split('.');
  return BigInt(whole + part.padEnd(decimals, '0'));
}

function unscaled(value: bigint, decimals: number): string {
  const digits = String(value < 0n ? -value : value).padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  return `${value < 0n ? '-' : ''}${whole}${decimals === 0 ? '' : `.${digits.slice(digits.length - decimals)}`}`;
}
