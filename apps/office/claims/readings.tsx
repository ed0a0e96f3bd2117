// What was measured for a claim, with everything that a color or chalk reading has to state.

import { label, type ClaimView } from '#jobs/contract';
import { PlainTable } from '../parts/table.js';
import { capital, day, number } from '../parts/words.js';

type Reading = ClaimView['readings'][number];

export function Readings({ claim: { readings } }: { readonly claim: ClaimView }) {
  const color = readings.filter(({ what }) => what === 'color');
  const other = readings.filter(({ what }) => what !== 'color');
  return (
    <section className="stack" aria-labelledby="readings">
      <h2 id="readings">Readings</h2>
      {readings.length === 0 && <p>Nothing was measured yet.</p>}
      {color.length > 0 && (
        <PlainTable
          caption="Color"
          note="L, a and b of the retained sample and of the weathered panel"
          columns={[
            'Measured',
            'Scale',
            'Light and observer',
            'Retained',
            'Weathered',
            'Panel',
            'Instrument',
          ]}
          rows={color.map((each) => [
            day(each.on),
            each.scale ?? 'not stated',
            viewing(each),
            lab(each.retained),
            lab(each.weathered),
            each.washed ? 'washed before' : 'not washed',
            instrument(each),
          ])}
        />
      )}
      {other.length > 0 && (
        <PlainTable
          caption="Chalk and other ratings"
          note="Chalk: 10 is best, rated before washing"
          columns={['Measured', 'What', { name: 'Rating', num: true }, 'Panel', 'Instrument']}
          rows={other.map((each) => [
            day(each.on),
            capital(label(each.what)),
            number(each.rating ?? 'not stated'),
            each.washed ? 'washed before' : 'not washed',
            instrument(each),
          ])}
        />
      )}
    </section>
  );
}

const viewing = ({ illuminant, observer }: Reading): string =>
  `${illuminant ?? 'light not stated'}, ${observer ? `${observer} degrees` : 'observer not stated'}`;
const lab = (of: Reading['retained']): string =>
  of ? `${number(of.L)}, ${number(of.a)}, ${number(of.b)}` : 'not stated';
const instrument = ({ instrument: name, calibrated }: Reading): string =>
  `${name ?? 'not stated'}${calibrated ? `, calibrated ${day(calibrated)}` : ''}`;
