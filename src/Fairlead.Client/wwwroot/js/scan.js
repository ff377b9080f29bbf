// Looks through the camera for the square code of a card, with the browser's own reader or, where it has none, jsQR 1.4.0 (Apache-2.0, vendor/).
const pause = 120;
const widest = 960;
let stream = null;

// The text of the first code that is seen; null when looking was ended before.
export async function look(video) {
    end();
    const mine = stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment', width: { ideal: 1280 } }, audio: false });
    video.srcObject = mine;
    await video.play();
    const read = await reader();
    while (stream === mine && video.isConnected) {
        const text = video.videoWidth > 0 ? await read(video) : null;
        if (text) { end(); return text; }
        await new Promise(r => setTimeout(r, pause));
    }
    mine.getTracks().forEach(t => t.stop());
    return null;
}

export function end() {
    stream?.getTracks().forEach(t => t.stop());
    stream = null;
}

async function reader() {
    if ('BarcodeDetector' in globalThis && (await BarcodeDetector.getSupportedFormats()).includes('qr_code')) {
        const detector = new BarcodeDetector({ formats: ['qr_code'] });
        return async video => (await detector.detect(video))[0]?.rawValue ?? null;
    }
    await import('./vendor/jsQR.js');
    const canvas = document.createElement('canvas');
    const pen = canvas.getContext('2d', { willReadFrequently: true });
    return async video => {
        const scale = Math.min(1, widest / video.videoWidth);
        canvas.width = Math.round(video.videoWidth * scale);
        canvas.height = Math.round(video.videoHeight * scale);
        pen.drawImage(video, 0, 0, canvas.width, canvas.height);
        const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height);
        return globalThis.jsQR(data, width, height)?.data ?? null;
    };
}
