// What can be pressed instead of typed: codes of the words `day_record.GROUP.CODE`, which a report says in its own language.

export const PRESSED = {
  what: ['coil', 'panels', 'flashing', 'clips', 'fasteners', 'underlayment', 'sealant', 'other'],
  accepted: ['accepted', 'set_aside', 'sent_back'],
  stored: ['dry', 'covered', 'open', 'roof'],
  equipment: ['seamer', 'driver', 'roll_former', 'lift', 'shears', 'other'],
  why: ['rain', 'wind', 'cold', 'heat', 'material', 'access', 'crew', 'stopped', 'holiday'],
  tied: ['seams_closed', 'loose_panels', 'bundles', 'open_edge', 'tools'],
  safety: ['talk', 'lines', 'ladders', 'near_miss'],
}
export const NONE = 'none' // said, and nothing to tell: something else than not told

/** Of these a gauge and a coating are on the label. */
export const SHEET = ['coil', 'panels', 'flashing']
export const SYSTEMS = ['MSG', 'GSG', 'USS', 'BS', 'mil']
