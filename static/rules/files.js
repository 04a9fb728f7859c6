// Put the rulebook's files into MicroPython as the package they are on the server, and hand out its one door.

/**
 * @param {any} python a loaded MicroPython
 * @param {[string, string][]} files name below `inspect_app/`, text
 * @returns {(text: string) => string} `inspect_app.record.ask.ask`
 */
export function writeFiles(python, files) {
  const made = new Set()
  const folder = (/** @type {string} */ path) => {
    if (made.has(path)) return
    made.add(path)
    python.FS.mkdir(path)
  }
  folder('/book')
  folder('/book/inspect_app')
  python.FS.writeFile('/book/inspect_app/__init__.py', '')
  for (const [name, text] of files) {
    const parts = name.split('/')
    parts.slice(0, -1).reduce((path, part) => {
      folder(`${path}/${part}`)
      return `${path}/${part}`
    }, '/book/inspect_app')
    python.FS.writeFile(`/book/inspect_app/${name}`, text)
  }
  python.runPython("import sys\nsys.path.insert(0, '/book')\nfrom inspect_app.record.ask import ask")
  return python.globals.get('ask')
}
