/* Hands on what the microphone hears, block by block. */
registerProcessor("hear", class extends AudioWorkletProcessor {
  process([input]) {
    if (input[0]) this.port.postMessage(input[0].slice());
    return true;
  }
});
