// Papa Parse, a reader of CSV that is not ours: every table of a JSON file `{name: text}`, each with the separator it is
// given by, to standard output.
import { readFileSync } from 'node:fs'
import Papa from 'papaparse'

const asked = JSON.parse(readFileSync(process.argv[2], 'utf8'))
console.log(JSON.stringify(asked.map(({ text, delimiter }) => Papa.parse(text, { delimiter, skipEmptyLines: true }).data)))
