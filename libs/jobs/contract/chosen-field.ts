// How a field of what a stage settled is named, with the unit that its value has.

/** Lengths that carry their unit in their name, or in none. */
const IN_INCHES: Readonly<Record<string, string>> = {
  width: 'width',
  'thickness in': 'base thickness',
};

/** `thickness_in` of "0.0179" is "base thickness" of "0.0179 in". */
export function chosenField(field: string, value: string): readonly [what: string, value: string] {
  const what = field.replaceAll('_', ' ');
  const length = IN_INCHES[what];
  return length === undefined ? [what, value] : [length, `${value} in`];
}
