// Seals a secret with the server's public key (RSA-OAEP, SHA-256): this tablet cannot open it again.
export async function seal(spki, text) {
    if (!globalThis.crypto?.subtle) throw new Error('This browser seals nothing on a page it does not trust.');
    const der = Uint8Array.from(atob(spki), c => c.charCodeAt(0));
    const key = await crypto.subtle.importKey('spki', der, { name: 'RSA-OAEP', hash: 'SHA-256' }, false, ['encrypt']);
    return new Uint8Array(await crypto.subtle.encrypt({ name: 'RSA-OAEP' }, key, text));
}
