// Trends of a job, for whoever leads its crews: what fails, the bad share lot by lot, foreman against audit, how long
// findings stay open. Every number is the record's, told on this phone, with or without signal.

import { html, useState } from '../frame/view.js'
import { language, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { printIn } from '../card/print.js'
import { Agreement } from './agreement.js'
import { Hatching } from './bar.js'
import { Closing } from './closing.js'
import { Found } from './found.js'
import { naming } from './named.js'
import { Narrow } from './narrow.js'
import { Pairs } from './pairs.js'
import { Pareto } from './pareto.js'
import { Shares } from './shares.js'
import { Table } from './table.js'
import { useTrends } from './use_trends.js'
import { keepFor, keptFor } from './wanted.js'

/** @param {{job: string, record: any, definitions: any[], rest: string[]}} props `rest`: `found/BY/KEY` or `pairs/OF` for what stands behind a number */
export function Trends({ job, record, definitions, rest }) {
  const [{ wanted, by }, setKept] = useState(keptFor(job))
  const { told, fault } = useTrends(record, wanted)
  const change = (/** @type {any} */ one) => setKept(keepFor(job, one))
  const named = naming(record, definitions, told?.crews ?? {})
  if (told && rest[0] === 'found') return html`<${Found} ...${{ job, record, definitions, told, by: rest[1], of: rest[2], named }} />`
  if (told && rest[0] === 'pairs') return html`<${Pairs} ...${{ job, record, told, of: rest[1], named }} />`
  return html`<${Screen} title=${say('trends')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    ${!told && html`<p class="big" role="status">${say('working')}</p>`}
    ${told && html`<div class="trends" data-name="trends" data-n=${told.pareto.n}>
      <${Hatching} />
      <${Narrow} ...${{ told, wanted, named, fault }} change=${(/** @type {any} */ next) => change({ wanted: next })} />
      <${Pareto} ...${{ job, by, named }} told=${told.pareto} choose=${(/** @type {string} */ next) => change({ by: next })} />
      <${Shares} ...${{ job, record, told, named }} />
      <${Agreement} ...${{ job, told }} />
      <${Closing} ...${{ job, record, definitions }} told=${told.closing} />
      <button type="button" class="press" data-name="print" onClick=${() => printIn(language())}><span class="label">${say('trends.print')}</span></button>
      <${Table} ...${{ job, wanted }} />
    </div>`}
  <//>`
}
