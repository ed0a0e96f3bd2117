// Buildings and their surfaces, as many as the job has.

import { label, SURFACE_KINDS } from '#jobs/contract';
import type { SurfaceKind } from '#jobs/contract';
import { SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { capital } from '../parts/words.js';
import type { NewBuilding, NewSurface } from './new-job.js';

export const KIND_OPTIONS = SURFACE_KINDS.map((value) => ({ value, label: capital(label(value)) }));

export function BuildingFields({
  buildings,
  errors,
  set,
}: {
  readonly buildings: readonly NewBuilding[];
  readonly errors: FieldErrors;
  readonly set: (buildings: readonly NewBuilding[]) => void;
}) {
  const put = (i: number, building: NewBuilding) => set(buildings.with(i, building));
  return (
    <section className="stack" aria-labelledby="buildings-title">
      <h2 id="buildings-title">Buildings and surfaces</h2>
      <p className="quiet">
        Every roof and wall surface is decided on its own. More can be added later.
      </p>
      {buildings.map((building, i) => (
        <Building
          key={i}
          at={i}
          building={building}
          errors={errors}
          put={(next) => put(i, next)}
          {...(buildings.length > 1 ? { remove: () => set(buildings.toSpliced(i, 1)) } : {})}
        />
      ))}
      <div>
        <button
          type="button"
          onClick={() => set([...buildings, { name: '', surfaces: [{ name: '', kind: 'roof' }] }])}
        >
          Add a building
        </button>
      </div>
    </section>
  );
}

function Building({
  at,
  building,
  errors,
  put,
  remove,
}: {
  readonly at: number;
  readonly building: NewBuilding;
  readonly errors: FieldErrors;
  readonly put: (building: NewBuilding) => void;
  readonly remove?: () => void;
}) {
  const surfaces = (next: readonly NewSurface[]) => put({ ...building, surfaces: next });
  return (
    <fieldset className="sheet stack">
      <legend className="visually-hidden">Building {at + 1}</legend>
      <TextField
        id={`b${at}-name`}
        label={`Name of building ${at + 1}`}
        hint="House, barn, warehouse 2"
        errors={errors}
        value={building.name}
        onChange={(name) => put({ ...building, name })}
      />
      {building.surfaces.map((surface, i) => (
        <div className="row bottoms" key={i}>
          <TextField
            id={`b${at}s${i}-name`}
            label={`Surface ${i + 1} of building ${at + 1}`}
            errors={errors}
            value={surface.name}
            onChange={(name) => surfaces(building.surfaces.with(i, { ...surface, name }))}
          />
          <SelectField
            id={`b${at}s${i}-kind`}
            label={`Kind of surface ${i + 1}`}
            options={KIND_OPTIONS}
            value={surface.kind}
            onChange={(kind) =>
              surfaces(building.surfaces.with(i, { ...surface, kind: kind as SurfaceKind }))
            }
          />
          {building.surfaces.length > 1 && (
            <button
              type="button"
              aria-label={`Remove surface ${i + 1} of building ${at + 1}`}
              onClick={() => surfaces(building.surfaces.toSpliced(i, 1))}
            >
              Remove
            </button>
          )}
        </div>
      ))}
      <div className="row">
        <button
          type="button"
          onClick={() => surfaces([...building.surfaces, { name: '', kind: 'roof' }])}
        >
          Add a surface
        </button>
        {remove && (
          <button type="button" onClick={remove}>
            Remove this building
          </button>
        )}
      </div>
    </fieldset>
  );
}
