"""Pictures and papers of a record: known by content, made plain, kept for good."""

import datetime as dt
import io
import uuid

import pytest
from django.conf import settings
from django.core.files.storage import default_storage
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from PIL import Image, ImageFile
from PIL.PngImagePlugin import PngInfo

from farm.models import Change
from farm.writing import void, write
from records.models import Attachment
from records.reading.pictures import PictureError, Trouble, made_plain
from reports.calc.shapes.basics import Span
from reports.ledger.attachments import season_attachments

ORIENTATION, MAKE, GPS = 0x0112, 0x010F, 0x8825
TURNED = 6
PAPER = b"%PDF-1.7\n1 0 obj\n<<>>\nendobj\n%%EOF\n"


def picture(size=(40, 20), form="JPEG", **options):
    out = io.BytesIO()
    Image.new("RGB", size, "green").save(out, form, **options)
    return out.getvalue()


def told_where():
    """A picture lying on its side that tells who took it and where."""
    return picture(exif=told_where_exif())


def told_where_exif():
    exif = Image.Exif()
    exif[ORIENTATION], exif[MAKE] = TURNED, "Some Telephone"
    exif[GPS] = {1: "N", 2: (40.0, 28.0, 0.0), 3: "W", 4: (101.0, 45.0, 0.0)}
    return exif


def test_a_picture_is_turned_upright_and_forgets_where_it_was_taken():
    data = told_where()
    assert b"Some Telephone" in data
    plain = made_plain(data)
    kept = Image.open(io.BytesIO(plain.data))
    assert kept.size == (20, 40)
    assert not kept.getexif()
    assert b"Some Telephone" not in plain.data


def test_a_telephones_own_kind_of_picture_becomes_a_photograph_upright_and_placeless():
    """HEIC, as telephones write it: its place is in it, and it lies on its side."""
    sent = Image.new("RGB", (40, 20), "green")
    out = io.BytesIO()
    sent.save(out, "HEIF", exif=told_where_exif().tobytes())
    assert out.getvalue()[4:12] == b"ftypheic"
    assert Image.open(io.BytesIO(out.getvalue())).getexif().get_ifd(GPS)
    plain = made_plain(out.getvalue())
    kept = Image.open(io.BytesIO(plain.data))
    assert (plain.type, kept.format, kept.size) == ("image/jpeg", "JPEG", (20, 40))
    assert not kept.getexif()
    assert b"Some Telephone" not in plain.data


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP"])
def test_a_picture_of_every_kind_forgets_whatever_else_was_written_into_it(form):
    exif = Image.Exif()
    exif[MAKE] = "Some Telephone"
    exif[ORIENTATION] = TURNED
    options = {"exif": exif}
    if form == "PNG":
        options["pnginfo"] = PngInfo()
        options["pnginfo"].add_text("Comment", "Some Remark")
    else:
        options["xmp"] = b"<x:xmpmeta>Some Remark</x:xmpmeta>"
    if form == "JPEG":
        options["comment"] = b"Some Remark, again"
    data = picture(form=form, **options)
    assert b"Some Telephone" in data
    assert b"Some Remark" in data
    plain = made_plain(data)
    assert b"Some" not in plain.data
    assert Image.open(io.BytesIO(plain.data)).size == (20, 40)


def test_a_large_picture_on_its_side_is_made_smaller_and_upright():
    exif = Image.Exif()
    exif[ORIENTATION] = TURNED
    kept = Image.open(io.BytesIO(made_plain(picture((4000, 3000), exif=exif)).data))
    assert kept.size == (1800, 2400)


def test_a_picture_is_known_by_its_content_and_not_by_its_ending():
    assert made_plain(picture(form="WEBP")).type == "image/jpeg"


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
        (b"MZ" + bytes(40), Trouble.UNKNOWN),
        (bytes(4) + b"ftypheic" + bytes(40), Trouble.BROKEN),
        (picture((400, 300), "HEIF")[:-30], Trouble.BROKEN),
        (picture((400, 300), "PNG")[:150], Trouble.BROKEN),
        (picture((400, 300), "WEBP")[:60], Trouble.BROKEN),
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


@pytest.mark.filterwarnings("ignore::PIL.Image.DecompressionBombWarning")
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
    assert f"attachments/{kept.client_key}/small/" in page
    assert Change.objects.filter(noun="attachment", object_id=kept.pk).exists()


@pytest.mark.django_db
def test_a_file_is_given_out_sealed_and_only_through_the_door(world, as_person):
    send(as_person(world.owner), world, PAPER, name="receipt.pdf")
    kept = Attachment.objects.get(shows="The tag")
    url = reverse("records:attachment", args=[world.farm.slug, kept.client_key])
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
    url = reverse("records:detach", args=[world.farm.slug, kept.client_key])
    client.post(url, {"reason": "The wrong tag"})
    kept.refresh_from_db()
    assert kept.voided_at
    assert default_storage.exists(kept.file.name)


@pytest.mark.django_db
def test_a_voided_attachment_is_put_back_at_a_press(world, as_person):
    client = as_person(world.crew)
    send(client, world, picture())
    kept = Attachment.objects.get(shows="The tag")
    at = {name: [world.farm.slug, kept.client_key] for name in ("detach", "reattach")}
    void_it, undo_it = (reverse(f"records:{name}", args=at[name]) for name in at)
    told = client.post(void_it, {"reason": "The wrong tag"}, follow=True)
    assert f'action="{undo_it}"' in told.content.decode()
    told = client.post(undo_it, follow=True).content.decode()
    assert "It stands with the record again." in told
    assert f'action="{undo_it}"' not in told
    kept.refresh_from_db()
    assert kept.voided_at is None
    client.post(void_it, {"reason": "The wrong tag"})
    Attachment.objects.filter(pk=kept.pk).update(voided_by=world.owner)
    assert client.post(undo_it).status_code == 403


@pytest.mark.django_db
def test_a_page_sent_twice_keeps_the_picture_once(world, as_person):
    client, key, before = as_person(world.crew), uuid.uuid4(), files()
    for _ in range(2):
        upload = SimpleUploadedFile("tag.jpg", picture())
        sent = {"upload": upload, "shows": "Sent twice", "client_key": key}
        assert client.post(attach_url(world), sent).status_code == 302
    kept = Attachment.objects.get(shows="Sent twice")
    assert {path.name for path in files() - before} == {kept.file.name.split("/")[-1]}


@pytest.mark.django_db
def test_a_write_that_fails_leaves_no_file(world, as_person, monkeypatch):
    before = files()

    def failing(*_, **__):
        raise RuntimeError

    monkeypatch.setattr("records.forms.attachments.write", failing)
    with pytest.raises(RuntimeError):
        send(as_person(world.crew), world, picture())
    assert files() == before


@pytest.mark.django_db
def test_a_stamp_of_a_picture_is_given_out_small_and_sealed(world, as_person):
    client = as_person(world.inspector)
    send(as_person(world.owner), world, picture((2000, 1000)))
    kept = Attachment.objects.get(shows="The tag")
    url = reverse("records:attachment-small", args=[world.farm.slug, kept.client_key])
    answer = client.get(url)
    assert Image.open(io.BytesIO(answer.content)).size == (320, 160)
    assert answer["Content-Security-Policy"] == "default-src 'none'; sandbox"
    assert as_person(world.stranger).get(url).status_code == 404


@pytest.mark.django_db
def test_a_picture_is_shown_in_the_browser_and_sealed(world, as_person):
    send(as_person(world.owner), world, picture())
    kept = Attachment.objects.get(shows="The tag")
    url = reverse("records:attachment", args=[world.farm.slug, kept.client_key])
    answer = as_person(world.crew).get(url)
    assert answer["Content-Type"] == "image/jpeg"
    assert answer["Content-Disposition"].startswith("inline")
    assert answer["Content-Security-Policy"] == "default-src 'none'; sandbox"
    assert b"".join(answer.streaming_content)[:3] == b"\xff\xd8\xff"


@pytest.mark.django_db
def test_a_file_that_somebody_took_from_the_disk_is_not_found(world, as_person):
    client = as_person(world.owner)
    send(client, world, picture())
    kept = Attachment.objects.get(shows="The tag")
    default_storage.delete(kept.file.name)
    for name in ("attachment", "attachment-small"):
        url = reverse(f"records:{name}", args=[world.farm.slug, kept.client_key])
        assert client.get(url).status_code == 404


@pytest.mark.django_db
def test_an_address_with_the_number_of_an_attachment_leads_nowhere(world, as_person):
    client = as_person(world.owner)
    send(client, world, picture())
    kept = Attachment.objects.get(shows="The tag")
    url = f"/farms/{world.farm.slug}/records/attachments/{kept.pk}/"
    assert client.get(url).status_code == 404


@pytest.mark.django_db
def test_a_voided_record_keeps_its_attachments_and_takes_no_more(world, as_person):
    client, lot = as_person(world.owner), world.ours["stations"]
    args = [world.farm.slug, "stations", lot.pk]
    sent = {"upload": SimpleUploadedFile("x", picture()), "shows": "The barn"}
    client.post(reverse("records:attach", args=args), sent)
    void(lot, by=world.owner, now=dt.datetime(2026, 6, 1, tzinfo=dt.UTC), reason="sold")
    sent = {"upload": SimpleUploadedFile("x", picture()), "shows": "Too late"}
    client.post(reverse("records:attach", args=args), sent)
    page = client.get(reverse("records:page", args=args)).content.decode()
    assert "The barn" in page
    assert "Too late" not in page
    assert default_storage.exists(Attachment.objects.get(shows="The barn").file.name)


@pytest.mark.django_db
def test_the_history_of_a_record_tells_of_its_attachments(world, as_person):
    client, lot = as_person(world.owner), world.ours["seed-lots"]
    send(client, world, picture())
    kept = Attachment.objects.get(shows="The tag")
    args = [world.farm.slug, "seed-lots", lot.pk]
    page = client.get(reverse("records:page", args=args)).content.decode()
    assert "wrote attachment" in page
    assert kept.sha256 in page


SEASON = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))


def kept_for(world, noun, **told):
    row = world.ours[noun]
    kept = Attachment(
        farm=world.farm,
        noun=row._meta.model_name,
        object_id=row.pk,
        type="image/jpeg",
        bytes=3,
        sha256="0" * 64,
        file="attachments/x.jpg",
        **told,
    )
    return write(kept, by=world.crew, now=dt.datetime(2027, 2, 1, tzinfo=dt.UTC))


@pytest.mark.django_db
def test_a_season_lists_what_was_taken_in_it_or_shows_a_record_of_it(
    world, django_assert_num_queries
):
    planting = world.ours["plantings"]
    planting.notes = "Even stand"
    write(planting, by=world.owner, now=dt.datetime(2026, 6, 2, tzinfo=dt.UTC))
    kept_for(world, "plantings", shows="Of a planting of 2026")
    kept_for(world, "fields", shows="Taken in 2026", taken_on=dt.date(2026, 7, 1))
    kept_for(world, "fields", shows="Taken in 2025", taken_on=dt.date(2025, 7, 1))
    kept_for(world, "fields", shows="Kept in 2027")
    wrong = kept_for(world, "fields", shows="Wrong", taken_on=dt.date(2026, 7, 2))
    void(wrong, by=world.crew, now=dt.datetime(2027, 2, 1, tzinfo=dt.UTC), reason="no")
    with django_assert_num_queries(1):
        listed = season_attachments(world.farm, SEASON)
    assert {(one.shows, one.void_reason) for one in listed} == {
        ("Of a planting of 2026", ""),
        ("Taken in 2026", ""),
        ("Wrong", "no"),
    }
    (of_planting,) = [one for one in listed if one.noun == "planting"]
    assert of_planting.record == str(planting)
    assert season_attachments(world.theirs.farm, SEASON) == ()
