// Records (a JSON list in a file) as the phone hands them to the rulebook for trends.
import { readFileSync } from 'node:fs'
import { asFarAsNeeded } from '../../static/trends/as_needed.js'

console.log(JSON.stringify(JSON.parse(readFileSync(process.argv[2], 'utf8')).map(asFarAsNeeded)))
