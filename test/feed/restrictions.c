/* Reads calendars with libical: for each file a line with its events, its parse errors, and whether RFC 5546 holds. */
#include <libical/ical.h>
#include <stdio.h>
#include <stdlib.h>

static char *contents(const char *path) {
  FILE *file = fopen(path, "rb");
  if (file == NULL) return NULL;
  size_t size = 0, room = 1 << 16;
  char *text = malloc(room);
  for (size_t got; text != NULL && (got = fread(text + size, 1, room - size - 1, file)) > 0;) {
    size += got;
    if (room - size < 2) text = realloc(text, room *= 2);
  }
  fclose(file);
  if (text != NULL) text[size] = '\0';
  return text;
}

/* libical keeps what it could not read as a property of its own. */
static int errors_in(icalcomponent *component) {
  int errors = 0;
  icalproperty *property = icalcomponent_get_first_property(component, ICAL_XLICERROR_PROPERTY);
  for (; property != NULL; property = icalcomponent_get_next_property(component, ICAL_XLICERROR_PROPERTY)) {
    fprintf(stderr, "%s\n", icalproperty_get_xlicerror(property));
    errors++;
  }
  icalcompiter inner = icalcomponent_begin_component(component, ICAL_ANY_COMPONENT);
  for (; icalcompiter_deref(&inner) != NULL; icalcompiter_next(&inner)) errors += errors_in(icalcompiter_deref(&inner));
  return errors;
}

int main(int count, char **paths) {
  icalerror_set_errors_are_fatal(0);
  for (int i = 1; i < count; i++) {
    char *text = contents(paths[i]);
    icalcomponent *calendar = text == NULL ? NULL : icalparser_parse_string(text);
    if (calendar == NULL) {
      printf("-1 -1 0\n");
    } else {
      int kept = icalrestriction_check(calendar);
      /* The check leaves its findings in the calendar, so that errors are counted after it. */
      printf("%d %d %d\n", icalcomponent_count_components(calendar, ICAL_VEVENT_COMPONENT), errors_in(calendar), kept);
      icalcomponent_free(calendar);
    }
    free(text);
  }
  return 0;
}
