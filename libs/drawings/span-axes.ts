// The frame that charts over the span share: level lines with their values, spans along the foot, and what
// both directions measure.

import { line, n, STROKES, text } from './svg.js';

export type Scale = ((value: number) => number) & { ticks(count: number): number[] };

export type Frame = readonly [
  width: number,
  height: number,
  left: number,
  right: number,
  top: number,
  bottom: number,
];

export interface UpAxis {
  readonly scale: Scale;
  readonly ticks: number;
  readonly words: string;
  readonly said: (value: number) => string;
}

export function spanAxes(
  [width, height, left, right, top, bottom]: Frame,
  x: Scale,
  spans: readonly number[],
  up: UpAxis,
): readonly string[] {
  const foot = height - bottom;
  const y = up.scale;
  return [
    ...y
      .ticks(up.ticks)
      .flatMap((tick) => [
        line([left, y(tick)], [width - right, y(tick)], STROKES.faint),
        text([left - 8, y(tick) + 4], up.said(tick), { size: 11, anchor: 'end' }),
      ]),
    ...spans.flatMap((span) => [
      line([x(span), foot], [x(span), foot + 5], STROKES.line),
      text([x(span), foot + 19], n(span), { size: 11, anchor: 'middle' }),
    ]),
    line([left, foot], [width - right, foot], STROKES.line),
    text([(left + width - right) / 2, height - 12], 'span between supports, in', {
      size: 12,
      anchor: 'middle',
    }),
    text([18, (top + foot) / 2], up.words, { size: 12, anchor: 'middle', turned: 90 }),
  ];
}
