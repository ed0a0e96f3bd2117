// How somebody checks the evidence without this office, its service or a network.

import type { JobView } from '#jobs/contract';
import type { JobProof } from '../api/proof.js';

export function HowToCheck({
  job,
  proof: { keys, checkpoint },
}: {
  readonly job: JobView;
  readonly proof: JobProof;
}) {
  const key = keys.find((each) => each.in_use)?.text;
  const file = `evidence-${job.number}.zip`;
  return (
    <section className="stack" aria-labelledby="check">
      <h2 id="check">How to check it without this system</h2>
      <ol className="steps-of">
        <li>Keep the file {file} as it came. Its README.txt says what is in it.</li>
        <li>
          Take a key or a checkpoint that you hold from elsewhere: from an issued paper of this
          office, from an earlier file, read out on the telephone. What nobody outside has seen
          proves nothing.
        </li>
        <li>
          On any computer with this software, without network or database:
          <pre className="digest note">
            npm run -s verify -- {file}
            {key && ` \\\n  --key "${key}"`}
            {checkpoint && ` \\\n  --checkpoint "${checkpoint.size} ${checkpoint.root}"`}
          </pre>
          It says in sentences what it found, and ends with “All of it holds.”, or names the first
          position that does not.
        </li>
        <li>
          Without this software: the hash of an entry is SHA-256 over one zero byte and the bytes of
          its file (RFC 9162, 2.1.1); proofs follow c2sp.org/tlog-proof, checkpoints
          c2sp.org/tlog-checkpoint, signatures are Ed25519 (RFC 8032). Any program for these formats
          can check them.
        </li>
      </ol>
    </section>
  );
}
