// Light, dark, or as the machine says; kept on this machine.

export const LOOKS = ['as the machine says', 'light', 'dark'] as const;
export type Look = (typeof LOOKS)[number];

export const look = (): Look =>
  LOOKS.find((each) => each === localStorage.getItem('look')) ?? LOOKS[0];

export function applyLook(chosen: Look = look()): void {
  localStorage.setItem('look', chosen);
  if (chosen === LOOKS[0]) delete document.documentElement.dataset['look'];
  else document.documentElement.dataset['look'] = chosen;
}
