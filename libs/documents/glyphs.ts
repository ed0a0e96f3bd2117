// Which letters a TrueType font can print, read from its character map (OpenType `cmap`, formats 4
// and 12), so that a name in another script is shown by its code points instead of stopping a paper.

/** Code points that the font has a glyph for. */
export function coverageOf(font: Buffer): ReadonlySet<number> {
  const cmap = tableAt(font, 'cmap');
  const found = new Set<number>();
  for (let i = 0; i < font.readUInt16BE(cmap + 2); i++) {
    const at = cmap + font.readUInt32BE(cmap + 8 + i * 8);
    const format = font.readUInt16BE(at);
    if (format === 4) addSegments(font, at, found);
    if (format === 12) addGroups(font, at, found);
  }
  return found;
}

function tableAt(font: Buffer, name: string): number {
  for (let i = 0; i < font.readUInt16BE(4); i++) {
    const entry = 12 + i * 16;
    if (font.toString('latin1', entry, entry + 4) === name) return font.readUInt32BE(entry + 8);
  }
  throw new Error(`the font has no ${name} table`);
}

function addSegments(font: Buffer, at: number, found: Set<number>): void {
  const twice = font.readUInt16BE(at + 6);
  for (let i = 0; i < twice; i += 2) {
    const end = font.readUInt16BE(at + 14 + i);
    const start = font.readUInt16BE(at + 16 + twice + i);
    for (let code = start; code <= end && code !== 0xffff; code++) found.add(code);
  }
}

function addGroups(font: Buffer, at: number, found: Set<number>): void {
  for (let i = 0; i < font.readUInt32BE(at + 12); i++) {
    const group = at + 16 + i * 12;
    for (let code = font.readUInt32BE(group); code <= font.readUInt32BE(group + 4); code++)
      found.add(code);
  }
}
