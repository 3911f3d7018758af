package fewermore.store.backup;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * AES-256-GCM (NIST SP 800-38D) over pieces of 64 KiB. Each piece has its number in its nonce and says whether it is
 * the last, so that pieces can't be turned round, left out or cut off; all stand under the backup's first line. A key
 * with its salt is used for many files: eight random bytes of each file stand in the nonce beside the number.
 */
final class LockedStreams {
  private static final int PIECE = 64 * 1024;
  private static final int TAG_BITS = 128;

  private LockedStreams() {}

  /** The passphrase is not the one the backup was locked with, or the backup was changed. */
  static final class WrongKey extends IOException {
    private static final long serialVersionUID = 1L;
  }

  private static Cipher cipher(int mode, Key key, byte[] file, long piece, boolean last, byte[] head) {
    try {
      Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
      // A file's own eight bytes, then the number of the piece: 96 bits.
      byte[] nonce = ByteBuffer.allocate(12).put(file, 0, 8).putInt(Math.toIntExact(piece)).array();
      cipher.init(mode, new SecretKeySpec(key.secret(), "AES"), new GCMParameterSpec(TAG_BITS, nonce));
      cipher.updateAAD(head);
      cipher.updateAAD(new byte[] {(byte) (last ? 1 : 0)});
      return cipher;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has AES-GCM", e);
    }
  }

  static OutputStream locking(OutputStream out, Key key, byte[] file, byte[] head) {
    DataOutputStream data = new DataOutputStream(out);
    return new OutputStream() {
      private final byte[] piece = new byte[PIECE];
      private int filled;
      private long number;
      private boolean closed;

      @Override
      public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
      }

      @Override
      public void write(byte[] bytes, int from, int length) throws IOException {
        int done = 0;
        while (done < length) {
          if (filled == PIECE) {
            send(false);
          }
          int part = Math.min(PIECE - filled, length - done);
          System.arraycopy(bytes, from + done, piece, filled, part);
          filled += part;
          done += part;
        }
      }

      private void send(boolean last) throws IOException {
        try {
          byte[] locked = cipher(Cipher.ENCRYPT_MODE, key, file, number++, last, head).doFinal(piece, 0, filled);
          data.writeInt(last ? -locked.length : locked.length);
          data.write(locked);
          filled = 0;
        } catch (GeneralSecurityException e) {
          throw new IOException(e);
        }
      }

      @Override
      public void close() throws IOException {
        if (!closed) {
          closed = true;
          send(true);
          data.close();
        }
      }
    };
  }

  static InputStream opening(InputStream in, Key key, byte[] file, byte[] head) {
    DataInputStream data = new DataInputStream(in);
    return new InputStream() {
      private byte[] piece = new byte[0];
      private int at;
      private long number;
      private boolean last;

      @Override
      public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
      }

      @Override
      public int read(byte[] into, int from, int length) throws IOException {
        while (at == piece.length) {
          if (last) {
            return -1;
          }
          next();
        }
        int part = Math.min(length, piece.length - at);
        System.arraycopy(piece, at, into, from, part);
        at += part;
        return part;
      }

      private void next() throws IOException {
        int length = data.readInt();
        last = length < 0;
        if (Math.abs((long) length) > PIECE + TAG_BITS / 8) {
          throw new WrongKey();
        }
        byte[] locked = new byte[Math.abs(length)];
        data.readFully(locked);
        try {
          piece = cipher(Cipher.DECRYPT_MODE, key, file, number++, last, head).doFinal(locked);
          at = 0;
        } catch (AEADBadTagException e) {
          throw new WrongKey();
        } catch (GeneralSecurityException e) {
          throw new IOException(e);
        }
      }

      @Override
      public void close() throws IOException {
        data.close();
      }
    };
  }
}
