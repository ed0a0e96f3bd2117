// A surface that left the job: its record stays, nothing can be confirmed on it.

export const Withdrawn = ({ why }: { readonly why: string }) => (
  <div className="notice">
    <p>
      This surface was withdrawn from the job: {why}. What was decided before can still be read.
    </p>
  </div>
);
