"""Pictures and papers of a record: known by content, made plain, kept for good."""

import io

import pytest
from django.conf import settings
from django.core.files.storage import default_storage
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from PIL import Image, ImageFile

from farm.models import Change
from records.models import Attachment
from records.reading.pictures import PictureError, Trouble, made_plain

ORIENTATION, MAKE, GPS = 0x0112, 0x010F, 0x8825
TURNED = 6
PAPER = b"%PDF-1.7\n1 0 obj\n<<>>\nendobj\n%%EOF\n"


def picture(size=(40, 20), form="JPEG", **options):
    out = io.BytesIO()
    Image.new("RGB", size, "green").save(out, form, **options)
    return out.getvalue()


def told_where():
    """A picture lying on its side that tells who took it and where."""
    exif = Image.Exif()
    exif[ORIENTATION], exif[MAKE] = TURNED, "Some Telephone"
    exif[GPS] = {1: "N", 2: (40.0, 28.0, 0.0), 3: "W", 4: (101.0, 45.0, 0.0)}
    return picture(exif=exif)


def test_a_picture_is_turned_upright_and_forgets_where_it_was_taken():
    data = told_where()
    assert b"Some Telephone" in data
    plain = made_plain(data)
    kept = Image.open(io.BytesIO(plain.data))
    assert kept.size == (20, 40)
    assert not kept.getexif()
    assert b"Some Telephone" not in plain.data


def test_a_large_picture_is_made_smaller():
    kept = Image.open(io.BytesIO(made_plain(picture((4000, 3000))).data))
    assert max(kept.size) == 2400


def test_a_paper_stays_as_it_is():
    assert made_plain(PAPER).data == PAPER


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", Trouble.EMPTY),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", Trouble.UNKNOWN),
        (b"<html><script>alert(1)</script></html>", Trouble.UNKNOWN),
        (b"GIF89a" + bytes(40), Trouble.UNKNOWN),
        (picture((400, 300))[:900], Trouble.BROKEN),
        (PAPER[:20], Trouble.BROKEN),
    ],
)
def test_what_is_no_sound_picture_or_paper_is_refused(data, reason):
    with pytest.raises(PictureError) as refused:
        made_plain(data)
    assert refused.value.reason is reason


def test_half_a_picture_is_refused_also_once_the_pdf_engine_is_loaded(monkeypatch):
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)
    with pytest.raises(PictureError) as refused:
        made_plain(picture((400, 300))[:900])
    assert refused.value.reason is Trouble.BROKEN


def test_a_picture_of_a_hundred_million_points_is_refused_before_it_is_read():
    bomb = io.BytesIO()
    Image.new("1", (12_000, 12_000)).save(bomb, "PNG", optimize=True)
    assert len(bomb.getvalue()) < 100_000
    with pytest.raises(PictureError) as refused:
        made_plain(bomb.getvalue())
    assert refused.value.reason is Trouble.TOO_MANY_POINTS


def attach_url(world):
    row = world.ours["seed-lots"]
    return reverse("records:attach", args=[world.farm.slug, "seed-lots", row.pk])


def send(client, world, data, name="tag.jpg", shows="The tag"):
    upload = SimpleUploadedFile(name, data, "image/jpeg")
    return client.post(attach_url(world), {"upload": upload, "shows": shows})


def files():
    folder = settings.MEDIA_ROOT / "attachments"
    return {path for path in folder.rglob("*") if path.is_file()}


@pytest.mark.django_db
def test_a_tag_is_kept_with_its_lot_and_shown_on_its_page(world, as_person):
    client = as_person(world.crew)
    send(client, world, told_where())
    kept = Attachment.objects.get(shows="The tag")
    lot = world.ours["seed-lots"]
    page = client.get(
        reverse("records:page", args=[world.farm.slug, "seed-lots", lot.pk])
    ).content.decode()
    assert f"attachments/{kept.pk}/" in page
    assert Change.objects.filter(noun="attachment", object_id=kept.pk).exists()


@pytest.mark.django_db
def test_a_file_is_given_out_sealed_and_only_through_the_door(world, as_person):
    send(as_person(world.owner), world, PAPER, name="receipt.pdf")
    kept = Attachment.objects.get(shows="The tag")
    url = reverse("records:attachment", args=[world.farm.slug, kept.pk])
    answer = as_person(world.inspector).get(url)
    assert b"".join(answer.streaming_content) == PAPER
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert "sandbox" in answer["Content-Security-Policy"]
    assert answer["Content-Disposition"].startswith("attachment")
    assert as_person(world.stranger).get(url).status_code == 404


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("data", "name", "words"),
    [
        (b"", "tag.jpg", "The file is empty."),
        (b"<svg/>", "tag.jpg", "no photograph, picture or PDF"),
        (picture((400, 300))[:900], "tag.jpg", "damaged or cut short"),
    ],
)
def test_a_bad_file_is_refused_beside_its_box_and_leaves_nothing(
    world, as_person, data, name, words
):
    before = files()
    answer = send(as_person(world.crew), world, data, name, shows="A tag, typed")
    page = answer.content.decode()
    assert words in page
    assert "A tag, typed" in page
    assert not Attachment.objects.filter(shows="A tag, typed").exists()
    assert files() == before


@pytest.mark.django_db
def test_a_file_over_the_limit_is_refused(world, as_person, settings):
    settings.ATTACHMENT_MAX_BYTES = 1024
    answer = send(as_person(world.crew), world, PAPER + bytes(2000))
    assert "The file is larger than" in answer.content.decode()


@pytest.mark.django_db
@pytest.mark.parametrize(
    "name", ["../../etc/passwd.jpg", "täg 🌾.jpg", "\u202egpj.jpg"]
)
def test_the_name_a_file_came_with_is_not_used(world, as_person, name):
    send(as_person(world.crew), world, picture(), name=name)
    kept = Attachment.objects.get(shows="The tag")
    assert kept.file.name.startswith(f"attachments/{world.farm.pk}/")
    assert "etc" not in kept.file.name


@pytest.mark.django_db
def test_a_voided_attachment_keeps_its_file(world, as_person):
    client = as_person(world.owner)
    send(client, world, picture())
    kept = Attachment.objects.get(shows="The tag")
    url = reverse("records:detach", args=[world.farm.slug, kept.pk])
    client.post(url, {"reason": "The wrong tag"})
    kept.refresh_from_db()
    assert kept.voided_at
    assert default_storage.exists(kept.file.name)
