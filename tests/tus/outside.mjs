// The outside client tus-js-client: a line of JSON with an upload on stdin, "done" or what went wrong on stdout.
import { createInterface } from 'node:readline'
import { Upload } from 'tus-js-client'

for await (const line of createInterface({ input: process.stdin })) {
  const { endpoint, token, metadata, bytes, chunk } = JSON.parse(line)
  console.log(await new Promise((resolve) => {
    new Upload(Buffer.from(bytes, 'base64'), {
      endpoint, metadata, chunkSize: chunk, headers: { Authorization: `Bearer ${token}` },
      retryDelays: Array.from({ length: 20 }, (_, n) => 10 * n), storeFingerprintForResuming: false,
      onSuccess: () => resolve('done'), onError: (fault) => resolve(`failed: ${fault.message}`),
    }).start()
  }))
}
