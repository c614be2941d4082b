import type { RoundView } from '../../session/session';

const MINUTE = 60;
const HOUR = 3600;

/** `14 min left`, `1 h 20 left`; before there is a pace nothing is claimed. */
export const leftWords = (round: Pick<RoundView, 'left_s' | 'steps'>): string => {
  const left = round.left_s;
  if (left === undefined) return `${round.steps.filter((s) => s.answered === 'no').length} to go`;
  return `${spanWords(left)} left`;
};

export const spanWords = (seconds: number): string => {
  const minutes = Math.max(1, Math.round(seconds / MINUTE));
  if (seconds < HOUR) return `${minutes} min`;
  const h = Math.floor(minutes / MINUTE);
  const rest = minutes % MINUTE;
  return rest === 0 ? `${h} h` : `${h} h ${rest}`;
};
