// The standing cautions, shown wherever loads, spans, gauges, fastening or roof work appear.

export const LOAD_CAUTIONS: readonly string[] = [
  'An office aid. Local code and the authority having jurisdiction govern; wind and snow values come from them.',
  'What spans open framing needs a licensed engineer.',
  'Passing a chart does not make a panel safe to walk on.',
  'Where no test, chart or confirmed table gives a number, there is none.',
];

export const ROOF_CAUTIONS: readonly string[] = [
  'Falls; fragile roofs and skylights; slick metal; wind while handling; power lines.',
  'Set bundles down only where the frame can carry them. Old roofs may hold asbestos or lead.',
  'Reconnect flues after tear-off. Sparks start fires.',
  'Oversize spacing or rotten framing: stop and call. Acknowledging this makes no roof safe or lawful.',
];

export const CAMERA_CAUTIONS: readonly string[] = [
  'Photograph from the ground or from a lift; nobody climbs a roof for a claim without fall protection.',
  'Fragile roofs, skylights and slick metal look safe in photos. Keep clear of power lines.',
];

export function Cautions({
  title = 'Cautions',
  lines = LOAD_CAUTIONS,
}: {
  readonly title?: string;
  readonly lines?: readonly string[];
}) {
  return (
    <section className="cautions" aria-label={title}>
      <h2>{title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
