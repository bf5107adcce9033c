/* resample WIDTH HEIGHT FRAME.raw RUNS OUT.raw : a frame (float32, rows one after the other) drawn onto a canvas of 3840 x 2160.

   What a plain loop can do, one thread, no library: both pictures are tangent planes about the same direction, so that the way from
   canvas to frame is affine; then the inverse of the frame's distortion by fixed-point steps; then bilinear sampling. Once with the
   map worked out at every pixel (OUT.raw gets that drawing), once on a grid of 32 pixels and bilinear between.
   Built by the benchmark itself: gcc -O3 -march=native -ffast-math -fno-finite-math-only -lm. Prints "name = number", milliseconds. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { CW = 3840, CH = 2160, GRID = 32 };
static const float A20 = 1.1e-7f, A11 = -6e-8f, A02 = 4e-8f, A30 = 1.35e-10f, A21 = 3e-12f, A12 = 1.42e-10f, A03 = -2e-12f;
static const float B20 = -3e-8f, B11 = 9e-8f, B02 = 7e-8f, B30 = 1e-12f, B21 = 1.38e-10f, B12 = -4e-12f, B03 = 1.31e-10f;
static long width, height;
static float *frame, *drawn;
static double m[6], middle_x, middle_y;

static inline float distort_a(float u, float v) { return u * u * (A20 + A30 * u + A21 * v) + v * (A11 * u + v * (A02 + A12 * u + A03 * v)); }
static inline float distort_b(float u, float v) { return u * u * (B20 + B30 * u + B21 * v) + v * (B11 * u + v * (B02 + B12 * u + B03 * v)); }

static inline void map(double x, double y, int steps, float *px, float *py) {
    double U = m[0] * x + m[1] * y + m[2], V = m[3] * x + m[4] * y + m[5], u = U, v = V;
    for (int i = 0; i < steps; i++) {
        double next = U - distort_a(u, v);
        v = V - distort_b(u, v);
        u = next;
    }
    *px = u + middle_x;
    *py = v + middle_y;
}

static inline float sample(float px, float py) {
    if (!(px >= 0 && py >= 0 && px <= width - 1 && py <= height - 1)) return NAN;
    int ix = (int)px, iy = (int)py;
    if (ix > width - 2) ix = width - 2;
    if (iy > height - 2) iy = height - 2;
    const float *p = frame + iy * width + ix;
    float fx = px - ix, fy = py - iy, low = p[0] + fx * (p[1] - p[0]), high = p[width] + fx * (p[width + 1] - p[width]);
    return low + fy * (high - low);
}

static void every_pixel(void) {
    static float X[CW], Y[CW];
    for (int y = 0; y < CH; y++) {
        for (int x = 0; x < CW; x++) map(x, y, 3, &X[x], &Y[x]);
        for (int x = 0; x < CW; x++) drawn[(long)y * CW + x] = sample(X[x], Y[x]);
    }
}

static void on_a_grid(void) {
    static float gx[CH / GRID + 2][CW / GRID + 1], gy[CH / GRID + 2][CW / GRID + 1], X[CW], Y[CW];
    for (int j = 0; j <= (CH + GRID - 1) / GRID; j++)
        for (int i = 0; i <= CW / GRID; i++) map(i * GRID, j * GRID, 8, &gx[j][i], &gy[j][i]);
    for (int y = 0; y < CH; y++) {
        int j = y / GRID;
        float f = (float)(y % GRID) / GRID;
        for (int i = 0; i < CW / GRID; i++) {
            float x0 = gx[j][i] + f * (gx[j + 1][i] - gx[j][i]), x1 = gx[j][i + 1] + f * (gx[j + 1][i + 1] - gx[j][i + 1]);
            float y0 = gy[j][i] + f * (gy[j + 1][i] - gy[j][i]), y1 = gy[j][i + 1] + f * (gy[j + 1][i + 1] - gy[j][i + 1]);
            for (int k = 0; k < GRID; k++) {
                X[i * GRID + k] = x0 + (x1 - x0) * (k * (1.0f / GRID));
                Y[i * GRID + k] = y0 + (y1 - y0) * (k * (1.0f / GRID));
            }
        }
        for (int x = 0; x < CW; x++) drawn[(long)y * CW + x] = sample(X[x], Y[x]);
    }
}

static int ascending(const void *a, const void *b) { double d = *(double *)a - *(double *)b; return (d > 0) - (d < 0); }

static void measure(const char *name, void (*draw)(void), int runs) {
    double *times = malloc(runs * sizeof *times);
    draw();
    for (int i = 0; i < runs; i++) {
        struct timespec a, b;
        clock_gettime(CLOCK_MONOTONIC, &a);
        draw();
        clock_gettime(CLOCK_MONOTONIC, &b);
        times[i] = (b.tv_sec - a.tv_sec) * 1e3 + (b.tv_nsec - a.tv_nsec) * 1e-6;
    }
    qsort(times, runs, sizeof *times, ascending);
    printf("%s = %.4f\n%s least = %.4f\n", name, times[runs / 2], name, times[0]);
    free(times);
}

int main(int count, char **words) {
    if (count != 6) return 2;
    width = atol(words[1]);
    height = atol(words[2]);
    int runs = atoi(words[4]);
    frame = malloc(width * height * sizeof *frame);
    drawn = malloc((long)CW * CH * sizeof *drawn);
    memset(drawn, 0, (long)CW * CH * sizeof *drawn);
    FILE *file = fopen(words[3], "rb");
    if (!file || fread(frame, sizeof *frame, width * height, file) != (size_t)(width * height)) return 1;
    fclose(file);
    middle_x = (width - 1) / 2.0;
    middle_y = (height - 1) / 2.0;
    /* The frame's and the canvas's matrices; the canvas is north up, its pixels 5 arcsec. */
    double s = 206.264806247 * 3.76 / 300 / 3600, c = 5.0 / 3600, turn = 30 * M_PI / 180;
    double c11 = -s * cos(turn), c12 = s * sin(turn), c21 = s * sin(turn), c22 = s * cos(turn), det = c11 * c22 - c12 * c21;
    double i11 = c22 / det, i12 = -c12 / det, i21 = -c21 / det, i22 = c11 / det;
    m[0] = -c * i11; m[1] = c * i12; m[2] = c * (CW - 1) / 2 * i11 - c * (CH - 1) / 2 * i12;
    m[3] = -c * i21; m[4] = c * i22; m[5] = c * (CW - 1) / 2 * i21 - c * (CH - 1) / 2 * i22;
    measure("grid", on_a_grid, runs);
    measure("every pixel", every_pixel, runs);
    file = fopen(words[5], "wb");
    return !file || fwrite(drawn, sizeof *drawn, (long)CW * CH, file) != (long)CW * CH || fclose(file);
}
