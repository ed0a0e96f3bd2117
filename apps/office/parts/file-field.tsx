// Choosing files; each is put away when chosen, and stands in a list with its digest.

import { useState } from 'react';
import { problemFrom } from '../api/client.js';
import { storeFile, type StoredFile } from '../api/files.js';
import { errorOf, type FieldErrors } from './fields.js';

export function FileField({
  id,
  label,
  hint,
  files,
  set,
  errors = [],
  accept,
}: {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly files: readonly StoredFile[];
  readonly set: (files: readonly StoredFile[]) => void;
  readonly errors?: FieldErrors;
  readonly accept?: string;
}) {
  const [state, setState] = useState('');
  const error = errorOf(errors, id);
  const choose = async (list: FileList | null) => {
    setState('Storing…');
    try {
      const stored = await Promise.all([...(list ?? [])].map(storeFile));
      set([...files, ...stored]);
      setState('');
    } catch (failed) {
      const { title, detail } = problemFrom(failed);
      setState(`Not stored: ${detail ?? title}`);
    }
  };
  return (
    <div className={error ? 'field wrong' : 'field'}>
      <label htmlFor={id}>{label}</label>
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && (
        <span className="error" id={`${id}-error`}>
          {error}
        </span>
      )}
      <input
        id={id}
        type="file"
        multiple
        accept={accept}
        onChange={(event) => void choose(event.target.files)}
        aria-describedby={
          [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined
        }
        {...(error ? { 'aria-invalid': true } : {})}
      />
      <span role="status">{state}</span>
      {files.length > 0 && (
        <ul>
          {files.map((file) => (
            <li key={file.digest}>
              {file.name} <span className="digest">{file.digest.slice(0, 16)}…</span>{' '}
              <button
                type="button"
                className="as-link"
                onClick={() => set(files.filter((each) => each !== file))}
              >
                Remove<span className="visually-hidden"> {file.name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
