from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("drafts", "0001_initial"),
    ]

    operations = [
        migrations.AddField(
            model_name="draft",
            name="left_mark",
            field=models.CharField(blank=True, default="", max_length=40),
        ),
    ]
