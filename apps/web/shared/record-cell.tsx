import type { RecordStatus } from '../session/session';
import { href } from './route';
import { useTroubles } from './trouble';

/** The state of the record in words, and only that: what is kept, what is not yet copied, what is in trouble. */
export const RecordCell = ({ record }: { readonly record: RecordStatus | undefined }) => {
  const trouble = useTroubles()[0];
  if (trouble || record?.state === 'problem')
    return (
      <a className="record problem" href={href('problems')}>
        Problem: {(trouble?.title ?? record?.words ?? '').toLowerCase()}
      </a>
    );
  if (record === undefined) return <span className="record" />;
  return (
    <a className="record" href={href('record')}>
      {record.state === 'not-copied' ? `${record.count} not copied yet` : 'All kept'}
    </a>
  );
};
