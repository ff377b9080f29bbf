// Passkeys live in the tablet or a key; only the browser can ask for them.
export const can = () => !!window.PublicKeyCredential?.parseCreationOptionsFromJSON;
export const make = async offer => JSON.stringify(await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(JSON.parse(offer)) }));
export const show = async offer => JSON.stringify(await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(JSON.parse(offer)) }));
