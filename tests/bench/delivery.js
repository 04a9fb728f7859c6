// The page's part of tests/bench/delivery.py: pictures of chance bytes, and a plain upload of as many.
window.picture = (size) => {
  const bytes = new Uint8Array(size)
  for (let at = 0; at < size; at += 65536) crypto.getRandomValues(bytes.subarray(at, Math.min(size, at + 65536)))
  bytes[0] = 0xff
  bytes[1] = 0xd8
  return bytes
}

window.declared = (job, { sha256, size, type }) => ({ job, kind: 'photo', subject: sha256, body: {
  walk: '01a00000-0000-7000-8000-00000000000b', station: null, answer: null, role: 'other', sha256, size, type,
  source: 'picked' } })

window.plain = async ({ photos, size }) => {
  window.link.now = 0
  for (let n = 0; n < photos; n += 1) {
    const reply = await fetch('/api/plain', { method: 'POST', body: window.picture(size) })
    if (!reply.ok) throw new Error(String(reply.status))
  }
  return window.link.now
}
