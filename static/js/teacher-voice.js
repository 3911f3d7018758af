/* Record your voice: a take is recorded, played, kept or thrown away. Kept as 16 kHz, 16 bit, one channel, which every
   tablet plays. Expects main[data-voice][data-csrf] with [data-take] sections. */
const RATE = 16000, LONGEST = 30;

const main = document.querySelector("main[data-voice]");

main?.querySelectorAll("[data-take]").forEach(section => {
  const at = name => section.querySelector(`[data-${name}]`);
  const say = text => { at("state").textContent = text; };
  let running = null, take = null, playing = null;

  at("keys").hidden = false;

  at("record").addEventListener("click", () => (running ? running.stop() : record()));
  at("play").addEventListener("click", play);
  at("keep").addEventListener("click", keep);

  async function record() {
    playing?.stop();
    let stream;
    try {
      stream = await navigator.mediaDevices.getUserMedia({ audio: true });
    } catch {
      say("No microphone could be used. Allow it for this page in the browser's address line, or plug one in.");
      return;
    }
    const audio = new AudioContext();
    await audio.audioWorklet.addModule(new URL("./teacher-voice-worklet.js", import.meta.url).href);
    const hear = new AudioWorkletNode(audio, "hear");
    const blocks = [];
    let length = 0;
    hear.port.onmessage = ({ data }) => {
      if (!running) return;
      blocks.push(data);
      length += data.length;
      at("level").value = Math.min(1, 3 * Math.sqrt(data.reduce((sum, each) => sum + each * each, 0) / data.length));
      say(`Recording, ${Math.floor(length / audio.sampleRate)} s. Press Stop when you have read it.`);
      if (length >= LONGEST * audio.sampleRate) running.stop();
    };
    audio.createMediaStreamSource(stream).connect(hear);
    running = { async stop() {
      running = null;
      stream.getTracks().forEach(track => track.stop());
      const rate = audio.sampleRate;
      await audio.close();
      draw(false);
      if (length < rate / 2) {
        say("That was very short. Record it once more.");
        return;
      }
      take = wav(await resampled(blocks, length, rate));
      at("play").hidden = false;
      at("keep").hidden = false;
      say("Recorded, not kept yet. Listen to it, then keep it.");
    } };
    draw(true);
  }

  function draw(recording) {
    at("record-word").textContent = recording ? "Stop" : "Record again";
    at("record").classList.toggle("running", recording);
    at("record").classList.remove("first");
    at("level").hidden = !recording;
    at("play").hidden = recording || !(take || at("play").dataset.there === "true");
    at("keep").hidden = recording || !take;
  }

  async function resampled(blocks, length, rate) {
    const all = new Float32Array(length);
    blocks.reduce((place, block) => {
      all.set(block, place);
      return place + block.length;
    }, 0);
    const frames = Math.min(LONGEST * RATE, Math.floor(length * RATE / rate));
    const offline = new OfflineAudioContext(1, frames, RATE);
    const buffer = offline.createBuffer(1, length, rate);
    buffer.copyToChannel(all, 0);
    const source = offline.createBufferSource();
    source.buffer = buffer;
    source.connect(offline.destination);
    source.start();
    return (await offline.startRendering()).getChannelData(0);
  }

  function wav(samples) {
    const view = new DataView(new ArrayBuffer(44 + samples.length * 2));
    const tag = (place, text) => [...text].forEach((letter, i) => view.setUint8(place + i, letter.charCodeAt(0)));
    tag(0, "RIFF");
    view.setUint32(4, 36 + samples.length * 2, true);
    tag(8, "WAVEfmt ");
    view.setUint32(16, 16, true);
    view.setUint16(20, 1, true);
    view.setUint16(22, 1, true);
    view.setUint32(24, RATE, true);
    view.setUint32(28, RATE * 2, true);
    view.setUint16(32, 2, true);
    view.setUint16(34, 16, true);
    tag(36, "data");
    view.setUint32(40, samples.length * 2, true);
    samples.forEach((sample, i) => view.setInt16(44 + i * 2, Math.max(-1, Math.min(1, sample)) * 32767, true));
    return view.buffer;
  }

  async function play() {
    if (playing) {
      playing.stop();
      return;
    }
    const audio = new AudioContext();
    const bytes = take ? take.slice(0)
      : await (await fetch(`${main.dataset.voice}/${section.dataset.take}`)).arrayBuffer();
    const source = audio.createBufferSource();
    source.buffer = await audio.decodeAudioData(bytes);
    source.connect(audio.destination);
    source.onended = () => {
      playing = null;
      audio.close();
      at("play").textContent = "Play";
    };
    playing = source;
    at("play").textContent = "Stop playing";
    source.start();
  }

  async function keep() {
    const form = new FormData();
    form.append("csrf", main.dataset.csrf);
    form.append("language", section.dataset.take);
    form.append("sound", new Blob([take], { type: "audio/wav" }), "take.wav");
    at("keep").disabled = true;
    say("Keeping it …");
    try {
      const answer = await fetch(main.dataset.voice, { method: "POST", body: form });
      if (!answer.ok) throw new Error();
      location.assign(main.dataset.voice);
    } catch {
      at("keep").disabled = false;
      say("It could not be kept. Fewermore may have stopped on this laptop; start it and press Keep it again.");
    }
  }
});
