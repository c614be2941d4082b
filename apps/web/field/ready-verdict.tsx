import type { Plan } from '../../../src/plan';
import { MarkSign } from '../shared/mark-sign';
import { PageTitle } from '../shared/page-title';
import { readyHead, readyLine, readyMark } from './ready-words';

/** The answer that heads a screen: ready to roll or not, and the first reason. */
export const ReadyVerdict = ({ plan, id, title }: { readonly plan: Plan; readonly id: string; readonly title: string }) => (
  <section className="verdict bare" aria-label="Ready to roll">
    <MarkSign mark={readyMark(plan)} />
    <div>
      <PageTitle id={id} title={title}>
        {readyHead(plan.ready)}
      </PageTitle>
      <p>{readyLine(plan.ready)}</p>
    </div>
  </section>
);
