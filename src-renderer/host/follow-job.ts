import type { Answer, Host, JobState } from '#shared/host/contract';
import { failed } from '#shared/host/contract';

/** Time between two looks at a job [ms]: often enough for a bar that moves evenly. */
const LOOK_ms = 120;

/**
 * Follows a job to its end.
 * @param onState  told of every look
 * @param signal   cancels the job
 * @returns the last state; a failed or cancelled job is a problem
 */
export async function followJob(host: Host, job: string, onState: (state: JobState) => void, signal: AbortSignal): Promise<Answer<JobState>> {
  let isCancelAsked = false;
  for (;;) {
    if (signal.aborted && !isCancelAsked) {
      isCancelAsked = true;
      await host.cancelJob({ job });
    }
    const answer = await host.jobState({ job });
    if (!answer.ok) return answer;
    const state = answer.value;
    onState(state);
    if (state.state === 'done') return answer;
    if (state.state === 'failed' && state.problem) return { ok: false, problem: state.problem };
    if (state.state === 'failed') return failed('failed', 'The work could not be finished.', '', 'Try again.');
    if (state.state === 'cancelled') return failed('cancelled', 'Cancelled.', '', '');
    await new Promise<void>((done) => {
      const timer = setTimeout(done, LOOK_ms);
      signal.addEventListener('abort', () => {
        clearTimeout(timer);
        done();
      }, { once: true });
    });
    // After the user cancelled, the host is asked until it says so; its answer alone counts.
    if (isCancelAsked) await new Promise((done) => setTimeout(done, LOOK_ms));
  }
}
