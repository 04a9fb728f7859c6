// The same figures as a table for a spreadsheet: the server writes it, so it takes signal.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { MainAction } from '../frame/main_action.js'
import { currentRow } from '../people/current.js'
import { callAs } from '../people/token.js'
import { Trouble } from '../words/trouble.js'
import { asQuery } from './wanted.js'

/** @param {{job: string, wanted: import('./wanted.js').Wanted}} props */
export function Table({ job, wanted }) {
  const [url, setUrl] = useState('')
  const query = asQuery(wanted)
  query.append('format', 'csv')
  useEffect(() => setUrl(''), [query.toString()])
  const fetchIt = async () => {
    const reply = await callAs(await currentRow(), 'GET', `/api/jobs/${job}/trends?${query}`, { expect: 'bytes' })
    const error = reply.data?.error ?? {}
    // A portal's page is no table, whatever its status says.
    const ours = reply.status === 200 && reply.bytes && (reply.headers.get('Content-Type') ?? '').startsWith('text/csv')
    if (!ours) throw new Trouble('trends.table.refused', { field: 'server', value: reply.status }, { message: error.message, wayOut: error.way_out })
    setUrl(URL.createObjectURL(new Blob([/** @type {ArrayBuffer} */ (reply.bytes)], { type: 'text/csv' })))
  }
  return url
    ? html`<a class="press main" href=${url} download=${`seamwalk-trends-${job.slice(0, 8)}.csv`} data-name="save-table"><span class="label">${say('trends.table.save')}</span></a>`
    : html`<${MainAction} name="get-table" label=${say('trends.table')} under=${say('trends.table.under')} run=${fetchIt} />`
}
