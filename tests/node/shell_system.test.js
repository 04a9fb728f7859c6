import assert from 'node:assert/strict'
import { test } from 'node:test'
import { isAndroid, isApple } from '../../static/shell/system.js'

// Shapes of what browsers tell of themselves; versions invented.
const TOLD = {
  phone: { userAgent: 'Mozilla/5.0 (iPhone; CPU iPhone OS 99_0 like Mac OS X) AppleWebKit/1 Version/99.0 Mobile Safari/1', maxTouchPoints: 5 },
  tablet: { userAgent: 'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15) AppleWebKit/1 Version/99.0 Safari/1', maxTouchPoints: 5 },
  desk: { userAgent: 'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15) AppleWebKit/1 Version/99.0 Safari/1', maxTouchPoints: 0 },
  android: { userAgent: 'Mozilla/5.0 (Linux; Android 99; K) AppleWebKit/1 Chrome/99 Mobile Safari/1', maxTouchPoints: 5 },
  linux: { userAgent: 'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/1 Chrome/99 Safari/1', maxTouchPoints: 0 },
}

test('phones that record only from their home screen are known, a tablet that calls itself a desk too', () => {
  assert.deepEqual(Object.keys(TOLD).filter((name) => isApple(TOLD[name])), ['phone', 'tablet'])
  assert.deepEqual(Object.keys(TOLD).filter((name) => isAndroid(TOLD[name])), ['android'])
})
