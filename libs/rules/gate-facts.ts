// What rules may read of a job at its gates: order, delivery, warranty and claim. Every key may be
// unknown; an empty list says that nothing is outstanding, which is not the same as not known.

export interface GateFacts {
  // order
  /** Surfaces with a stage not confirmed, or up for re-check, by name with the stage. */
  readonly surfaces_not_ready?: readonly string[] | undefined;
}
