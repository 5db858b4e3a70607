// Walk around a field: each press adds the phone's place as a corner to the box.

const DECIMALS = 7;
const M_PER_FT = 0.3048;
const PATIENCE = { enableHighAccuracy: true, maximumAge: 0, timeout: 20000 };

const isTyped = (text) => !/^\s*[<{[]/.test(text);
const corners = (text) => text.split("\n").filter((line) => line.trim()).length;

function add(box, said, place) {
  const { latitude, longitude, accuracy } = place.coords;
  const line = `${latitude.toFixed(DECIMALS)}, ${longitude.toFixed(DECIMALS)}`;
  box.value = `${box.value.trimEnd()}\n${line}\n`.trimStart();
  box.scrollTop = box.scrollHeight;
  said.textContent = box.dataset.walkAdded
    .replace("{n}", corners(box.value))
    .replace("{m}", Math.ceil(accuracy))
    .replace("{ft}", Math.ceil(accuracy / M_PER_FT));
}

function ask(box, button, said) {
  if (!isTyped(box.value)) {
    said.textContent = box.dataset.walkFull;
    return;
  }
  const done = (tell) => {
    button.disabled = false;
    tell();
  };
  button.disabled = true;
  said.textContent = box.dataset.walkAsking;
  navigator.geolocation.getCurrentPosition(
    (place) => done(() => add(box, said, place)),
    (error) => done(() => {
      const refused = error.code === error.PERMISSION_DENIED;
      said.textContent = refused ? box.dataset.walkRefused : box.dataset.walkFailed;
    }),
    PATIENCE,
  );
}

function offer(box) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "quiet";
  button.textContent = box.dataset.walk;
  const said = document.createElement("span");
  said.setAttribute("role", "status");
  const row = document.createElement("p");
  row.className = "buttons";
  row.append(button, said);
  box.after(row);
  button.addEventListener("click", () => ask(box, button, said));
}

// Browsers hand out the place only to a page that came over a safe line.
if (navigator.geolocation && window.isSecureContext) {
  document.querySelectorAll("textarea[data-walk]").forEach(offer);
}
